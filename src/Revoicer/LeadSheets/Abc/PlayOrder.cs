using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>
/// Unfolds repeats with any number of endings. A repeat without a beginning goes back to the latest double bar or end of a
/// repeat, whichever is later, or to the start (standard 2.1, section 4.8).
/// </summary>
internal sealed class PlayOrder
{
    private readonly IReadOnlyList<ReadBar> _bars;
    private readonly Remarks _remarks;
    private readonly int _to;
    private readonly List<int> _order = [];
    private int _start;
    private int _pass;
    private int _times;
    private int _ending = -1;

    private PlayOrder(IReadOnlyList<ReadBar> bars, int from, int to, Remarks remarks)
    {
        (_bars, _to, _remarks) = (bars, to, remarks);
        Begin(from);
    }

    /// <summary>The bars of a stretch as heard; not many more than a sheet may have.</summary>
    /// <param name="bars">The bars as written.</param>
    /// <param name="from">The first of the stretch.</param>
    /// <param name="to">The one behind its last.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static IReadOnlyList<int> Of(IReadOnlyList<ReadBar> bars, int from, int to, Remarks remarks)
    {
        var order = new PlayOrder(bars, from, to, remarks);
        for (var bar = from; bar < to && order._order.Count <= SheetLimits.MostBars;)
        {
            bar = order.Step(bar);
        }

        order.WarnOfOpen();
        return order._order;
    }

    // Plays or passes over a bar and gives the next one.
    private int Step(int index)
    {
        var bar = _bars[index];
        if (bar.Opening is not null && index != _start)
        {
            WarnOfOpen();
            Begin(index);
        }

        if (bar.Ending.Count > 0)
        {
            if (!bar.Ending.Contains(_pass))
            {
                return PassOver(index);
            }

            _ending = index;
        }

        _order.Add(index);
        if (bar.Closes > 0 && _pass < _times)
        {
            (_pass, _ending) = (_pass + 1, -1);
            return _start;
        }

        if (bar.Closes > 0 || (bar.EndsSection && IsOver))
        {
            Begin(index + 1);
        }

        return index + 1;
    }

    // Whether a double bar here ends what may be repeated: not inside "|: :|", nor in an ending that leads back.
    private bool IsOver => _ending >= 0 ? _pass == _times : _bars[_start].Opening is null;

    private void Begin(int index)
    {
        (_start, _pass, _ending) = (index, 1, -1);
        _times = Times(index);
    }

    // To the ending of this time, or behind this one where there is none.
    private int PassOver(int index)
    {
        var place = _bars[index].EndingPlace!;
        if (_pass == 1)
        {
            _remarks.Refuse(place, "an ending for a later time, with no repeat before it", "a first ending that ends with ':|'");
            return _to;
        }

        var seen = new HashSet<int>(_bars[index].Ending);
        for (var i = index + 1; i < _to && _bars[i].Opening is null; i++)
        {
            if (_bars[i].Ending.Contains(_pass) && !_bars[i].Ending.Any(seen.Contains))
            {
                return i;
            }

            if (_bars[i].Ending.Any(seen.Contains))
            {
                break;
            }

            seen.UnionWith(_bars[i].Ending);
        }

        return BehindEnding(index, place);
    }

    private int BehindEnding(int index, Place place)
    {
        var end = index;
        while (end < _to && _bars[end].Closes == 0)
        {
            end++;
        }

        _remarks.WarnOnce(place, $"no ending for time {_pass}; it goes on behind this one", $"'[{_pass}' behind the ':|'");
        Begin(end + 1);
        return end + 1;
    }

    // How often the repeat that begins here is heard. It goes on behind ':|' only where another ending follows.
    private int Times(int start)
    {
        var times = 1;
        var seen = new HashSet<int>();
        for (var i = start; i < _to && (i == start || _bars[i].Opening is null) && !_bars[i].Ending.Any(seen.Contains); i++)
        {
            seen.UnionWith(_bars[i].Ending);
            times = Math.Max(times, 1 + _bars[i].Closes);
            if (_bars[i].Closes > 0 && (i + 1 == _to || _bars[i + 1].Ending.Count == 0))
            {
                break;
            }
        }

        var opens = start < _to ? _bars[start].Opening?.Opens ?? 0 : 0;
        return Math.Max(times, Math.Max(times > 1 ? 1 + opens : 1, seen.Count > 0 ? seen.Max() : 1));
    }

    private void WarnOfOpen()
    {
        if (_start < _to && _bars[_start].Opening is { } line && _pass == 1)
        {
            _remarks.WarnOnce(line.Where, "a repeat without an end is heard once", "':|' at its end");
        }
    }
}
