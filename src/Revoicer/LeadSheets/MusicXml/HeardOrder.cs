using Revoicer.LeadSheets.Abc;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>
/// Unfolds repeats with endings, da capo, dal segno, fine and coda into the order in which bars are heard. A repeat without
/// a beginning goes back to where the last one ended, or to the start; after da capo and dal segno repeats are not taken
/// again and the last ending is played (common practice).
/// </summary>
internal sealed class HeardOrder
{
    private readonly IReadOnlyList<ReadMeasure> _measures;
    private readonly Remarks _remarks;
    private readonly List<int> _order = [];
    private readonly IReadOnlyList<int>[] _endings;
    private readonly int _lastClose;
    private int _start;
    private int _pass;
    private int _times;
    private bool _hasJumped;

    private HeardOrder(IReadOnlyList<ReadMeasure> measures, Remarks remarks)
    {
        (_measures, _remarks) = (measures, remarks);
        _endings = new IReadOnlyList<int>[measures.Count];
        _lastClose = Enumerable.Range(0, measures.Count).LastOrDefault(i => measures[i].Signs.Times > 0, -1);
        IReadOnlyList<int> open = [];
        for (var i = 0; i < measures.Count; i++)
        {
            var signs = measures[i].Signs;
            open = signs.Ending.Count > 0 ? signs.Ending : open;
            _endings[i] = open;
            open = signs.EndsEnding || signs.Times > 0 ? [] : open;
        }
    }

    /// <summary>The bars as heard, as indices; not many more than a sheet may have.</summary>
    public static IReadOnlyList<int> Of(IReadOnlyList<ReadMeasure> measures, Remarks remarks)
    {
        var order = new HeardOrder(measures, remarks);
        order.Begin(0);
        for (var bar = 0; bar < measures.Count && order._order.Count <= SheetLimits.MostBars;)
        {
            bar = order.Step(bar);
        }

        order.WarnOfUnheard();
        return order._order;
    }

    private int Step(int bar)
    {
        var signs = _measures[bar].Signs;
        if (signs.Opens && bar != _start)
        {
            Begin(bar);
        }

        if (_endings[bar].Count > 0 && !_endings[bar].Contains(_pass))
        {
            return bar + 1;
        }

        _order.Add(bar);
        return Behind(bar, signs);
    }

    // The bar that follows one that has been heard.
    private int Behind(int bar, OrderSigns signs)
    {
        if (_hasJumped && signs.IsFine)
        {
            return _measures.Count;
        }

        if (_hasJumped && signs.ToCoda && Coda(bar) is { } coda)
        {
            Begin(coda);
            return coda;
        }

        if (signs.Times > 0 && _pass < _times)
        {
            _pass++;
            return _start;
        }

        if (!_hasJumped && (signs.DaCapo || signs.DalSegno))
        {
            return Jump(bar, signs);
        }

        if (signs.Times > 0 || EndsLastEnding(bar))
        {
            Begin(bar + 1);
        }

        return bar + 1;
    }

    private bool EndsLastEnding(int bar) =>
        _endings[bar].Count > 0 && _pass == _times && (_measures[bar].Signs.EndsEnding || bar + 1 == _measures.Count || _endings[bar + 1].Count == 0);

    private int Jump(int bar, OrderSigns signs)
    {
        _hasJumped = true;
        var to = 0;
        if (!signs.DaCapo)
        {
            to = Enumerable.Range(0, bar + 1).LastOrDefault(i => _measures[i].Signs.IsSegno, -1);
            if (to < 0)
            {
                _remarks.Warn(_measures[bar].Where, "dal segno without a segno before it; it goes back to the beginning", "a segno");
                to = 0;
            }
        }

        Begin(to);
        return to;
    }

    // The coda behind the sign that leads to it.
    private int? Coda(int from) => Enumerable.Range(from + 1, _measures.Count - from - 1)
        .Where(i => _measures[i].Signs.IsCoda)
        .Select(i => (int?)i)
        .FirstOrDefault();

    private void Begin(int bar)
    {
        _start = bar;
        _times = Times(bar);
        _pass = _hasJumped ? _times : 1;
    }

    // How often the stretch that begins here is heard: to its end sign, or through its endings.
    private int Times(int start)
    {
        var (times, closes) = (1, false);
        for (var i = start; start <= _lastClose && i < _measures.Count && (i == start || !_measures[i].Signs.Opens); i++)
        {
            if (closes && _endings[i].Count == 0)
            {
                break;
            }

            times = Math.Max(times, Math.Max(_measures[i].Signs.Times, _endings[i].DefaultIfEmpty(1).Max()));
            closes |= _measures[i].Signs.Times > 0;
        }

        return closes ? times : 1;
    }

    private void WarnOfUnheard()
    {
        var heard = _order.ToHashSet();
        if (!_hasJumped && Enumerable.Range(0, _measures.Count).Where(i => !heard.Contains(i)).Select(i => (int?)i).FirstOrDefault() is { } unheard && _order.Count <= SheetLimits.MostBars)
        {
            _remarks.Warn(_measures[unheard].Where, "repeats and endings leave this bar unheard", "an ending for each time through");
        }
    }
}
