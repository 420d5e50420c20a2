namespace Revoicer.LeadSheets.MusicXml;

/// <summary>An ending: the bars under one bracket.</summary>
/// <param name="From">Its first bar.</param>
/// <param name="To">Its last bar.</param>
/// <param name="Times">The times through at which it is heard, upward.</param>
internal sealed record EndingBracket(int From, int To, IReadOnlyList<int> Times);

/// <summary>
/// Where the endings of a part reach, and how often what stands before them is heard. MusicXML 4.0 says where a bracket
/// is drawn ("ending"). Some programs draw it shorter than it holds: a first ending reaches to its backward repeat, and so
/// does one that another ending follows (common practice).
/// </summary>
internal sealed class EndingBrackets
{
    private readonly IReadOnlyList<OrderSigns> _signs;
    private readonly EndingBracket?[] _at;
    private readonly int _lastClose;

    /// <summary>The endings of a part.</summary>
    /// <param name="signs">The signs of all its bars.</param>
    public EndingBrackets(IReadOnlyList<OrderSigns> signs)
    {
        _signs = signs;
        _at = new EndingBracket?[signs.Count];
        _lastClose = Enumerable.Range(0, signs.Count).LastOrDefault(i => signs[i].Times > 0, -1);
        for (var i = 0; i < signs.Count; i++)
        {
            if (signs[i].Ending.Count > 0)
            {
                var to = End(i);
                Array.Fill(_at, new EndingBracket(i, to, Times(i)), i, to + 1 - i);
                i = to;
            }
        }
    }

    /// <summary>The ending that a bar belongs to; null where it belongs to none.</summary>
    public EndingBracket? At(int bar) => bar < _at.Length ? _at[bar] : null;

    /// <summary>Whether an ending ends with a bar.</summary>
    public bool EndsAt(int bar) => _at[bar]?.To == bar;

    /// <summary>Whether an ending that ends with this bar leads back without a sign, since one for later times follows it.</summary>
    public bool LeadsBackUnsigned(int bar) =>
        EndsAt(bar) && At(bar + 1) is { } next && next.Times[0] > _at[bar]!.Times[^1] && !_signs[bar].DaCapo && !_signs[bar].DalSegno;

    /// <summary>
    /// The times through of the stretch that begins with a bar: to its end sign, and through its endings. A number that no
    /// ending bears is left out, so that after the last but one time the highest ending is heard.
    /// </summary>
    /// <param name="start">The first bar.</param>
    /// <param name="hasJumped">Whether it is heard after a jump, when an ending counts though nothing is repeated.</param>
    /// <returns>Numbers upward, at least one.</returns>
    public IReadOnlyList<int> TimesFrom(int start, bool hasJumped)
    {
        var numbers = new SortedSet<int> { 1 };
        var (times, closes) = (1, false);
        for (var i = start; (hasJumped || start <= _lastClose) && i < _signs.Count && (i == start || !_signs[i].Opens); i++)
        {
            if (closes && _at[i] is null)
            {
                break;
            }

            numbers.UnionWith(_at[i]?.Times ?? []);

            // MusicXML 4.0: "times" counts only where the sign is part of no ending.
            times = Math.Max(times, _at[i] is null ? _signs[i].Times : Math.Min(2, _signs[i].Times));
            closes |= _signs[i].Times > 0;
        }

        if (!closes && !hasJumped)
        {
            return [1];
        }

        for (var next = 2; numbers.Count < times; next++)
        {
            numbers.Add(next);
        }

        return [.. numbers];
    }

    // The last bar of the ending that begins with a bar.
    private int End(int from)
    {
        for (var i = from; i < _signs.Count; i++)
        {
            if (_signs[i].Times > 0 || i + 1 == _signs.Count || _signs[i + 1].Opens || _signs[i + 1].Ending.Count > 0)
            {
                return i;
            }

            if (_signs[i].EndsEnding)
            {
                return Backward(i + 1) is { } back && (_signs[from].Ending.Contains(1) || (back + 1 < _signs.Count && _signs[back + 1].Ending.Count > 0)) ? back : i;
            }
        }

        return _signs.Count - 1;
    }

    // The next backward repeat; null where a repeat or an ending begins before it.
    private int? Backward(int from)
    {
        for (var i = from; i < _signs.Count && !_signs[i].Opens && _signs[i].Ending.Count == 0; i++)
        {
            if (_signs[i].Times > 0)
            {
                return i;
            }
        }

        return null;
    }

    // An ending right behind a backward repeat that bears no number of its own is for the next time.
    private IReadOnlyList<int> Times(int from)
    {
        var own = _signs[from].Ending.Order().ToArray();
        var before = new SortedSet<int>();
        for (var i = from - 1; i >= 0 && _at[i] is { } bracket && _signs[bracket.To].Times > 0; i = bracket.From - 1)
        {
            before.UnionWith(bracket.Times);
        }

        return own.All(before.Contains) ? [before.Max + 1] : own;
    }
}
