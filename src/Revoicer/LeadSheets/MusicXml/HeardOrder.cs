using Revoicer.LeadSheets.Abc;
using Revoicer.Text;

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
    private readonly EndingBrackets _brackets;
    private int _start;
    private IReadOnlyList<int> _times = [];
    private int _time;
    private bool _hasJumped;

    private HeardOrder(IReadOnlyList<ReadMeasure> measures, Remarks remarks)
    {
        (_measures, _remarks) = (measures, remarks);
        _brackets = new EndingBrackets([.. measures.Select(m => m.Signs)]);
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

    private bool IsLastTime => _time + 1 >= _times.Count;

    private int Step(int bar)
    {
        var signs = _measures[bar].Signs;
        if (signs.Opens && bar != _start)
        {
            Begin(bar);
        }

        if (_brackets.At(bar) is { } bracket && !bracket.Times.Contains(_times[_time]))
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

        if (!IsLastTime && (signs.Times > 0 || _brackets.LeadsBackUnsigned(bar)))
        {
            _time++;
            return _start;
        }

        if (!_hasJumped && (signs.DaCapo || signs.DalSegno))
        {
            return Jump(bar, signs);
        }

        if (signs.Times > 0 || (IsLastTime && _brackets.EndsAt(bar)))
        {
            Begin(bar + 1);
        }

        return bar + 1;
    }

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
        _times = _brackets.TimesFrom(bar, _hasJumped);
        _time = _hasJumped ? _times.Count - 1 : 0;
    }

    private void WarnOfUnheard()
    {
        var heard = _order.ToHashSet();
        if (_order.Count <= SheetLimits.MostBars && Enumerable.Range(0, _measures.Count).Where(i => !heard.Contains(i)).Select(i => (int?)i).FirstOrDefault() is { } unheard)
        {
            _remarks.Warn(_measures[unheard].Where, "repeats, endings and jumps leave this bar unheard", "an ending for each time through");
        }
    }
}
