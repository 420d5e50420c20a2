using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>The order in which the parts of a tune are heard, as "P:" at its head gives it: "ABAC", "(AB)2C".</summary>
internal sealed class PartOrder
{
    // Brackets inside brackets; nobody writes more than two.
    private const int MostNested = 8;

    private readonly AbcCursor _cursor;
    private readonly Remarks _remarks;

    private PartOrder(AbcPiece field, Remarks remarks)
    {
        _cursor = new AbcCursor(field.Text, field.Where);
        _remarks = remarks;
    }

    /// <summary>The bars as heard: parts in their order, repeats unfolded.</summary>
    /// <param name="bars">The bars as written.</param>
    /// <param name="field">What stands behind "P:" at the head; null for the order as written.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static IReadOnlyList<int> Of(IReadOnlyList<ReadBar> bars, AbcPiece? field, Remarks remarks)
    {
        var starts = Enumerable.Range(0, bars.Count).Where(i => bars[i].Part is not null).ToList();
        if (field is null || starts.Count == 0)
        {
            WarnOfUnmarked(field, remarks);
            return PlayOrder.Of(bars, 0, bars.Count, remarks);
        }

        var parts = new Dictionary<char, IReadOnlyList<int>>();
        foreach (var (i, start) in starts.Index())
        {
            var part = bars[start].Part!.Value;
            if (!parts.TryAdd(part, PlayOrder.Of(bars, start, i + 1 < starts.Count ? starts[i + 1] : bars.Count, remarks)))
            {
                remarks.Warn(bars[start].Where!, $"part '{part}' begins a second time, and the order of parts takes the first", "a letter of its own for each part");
            }
        }

        // What stands before the first part leads in.
        var order = PlayOrder.Of(bars, 0, starts[0], remarks).ToList();
        foreach (var part in Letters(field, remarks))
        {
            if (!parts.TryGetValue(part, out var heard))
            {
                remarks.Refuse(field.Where, $"the tune has no part '{part}'", $"parts of the tune: {string.Join(", ", parts.Keys.Order())}");
                return [];
            }

            order.AddRange(heard);
            if (order.Count > SheetLimits.MostBars)
            {
                return order;
            }
        }

        return order;
    }

    private static void WarnOfUnmarked(AbcPiece? field, Remarks remarks)
    {
        if (field is not null)
        {
            remarks.Warn(field.Where, $"no part is marked in the tune, so the order '{Quoted.Text(field.Text)}' is not followed", "'P:' and its letter where a part begins");
        }
    }

    private static IReadOnlyList<char> Letters(AbcPiece field, Remarks remarks)
    {
        var reader = new PartOrder(field, remarks);
        var letters = reader.Group(0);
        if (letters.Count == 0 || (!reader._cursor.IsAtEnd && letters.Count <= SheetLimits.MostBars))
        {
            remarks.Refuse(field.Where, $"'{Quoted.Text(field.Text)}' is no order of parts", "letters, brackets and numbers such as (AB)2C");
        }

        return letters;
    }

    private List<char> Group(int depth)
    {
        var letters = new List<char>();
        while (!_cursor.IsAtEnd && _cursor.Here != ')' && letters.Count <= SheetLimits.MostBars)
        {
            if (_cursor.Here is '.' or ' ')
            {
                _cursor.Skip();
                continue;
            }

            if (Item(depth) is not { } item)
            {
                break;
            }

            var times = _cursor.TakeNumber() ?? 1;
            for (var i = 0; i < times && item.Count > 0 && letters.Count <= SheetLimits.MostBars; i++)
            {
                letters.AddRange(item);
            }
        }

        return letters;
    }

    // A letter, or a group in brackets; null where neither stands.
    private List<char>? Item(int depth)
    {
        var c = _cursor.Here;
        if (char.IsAsciiLetter(c))
        {
            _cursor.Skip();
            return [c];
        }

        if (depth == MostNested || !_cursor.Take('('))
        {
            return null;
        }

        var group = Group(depth + 1);
        return _cursor.Take(')') ? group : null;
    }
}
