using System.Globalization;
using Revoicer.Music;
using Revoicer.Smf;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Midi;

/// <summary>
/// The bars of a file: from tick 0 on by its metres, each metre beginning a bar. Bar lines are counted in 48ths of a quarter,
/// in which the shortest bar and the places of metres are whole.
/// </summary>
internal sealed class BarLines
{
    // 1/64 is three of them, a 24th of a quarter, to which the places of metres are taken, two.
    private const int Part = 48;
    private const int MetrePlaces = 24;

    private static readonly Meter Assumed = new(4, 4);

    // A division that a grid does not part rounds its places to ticks. On finer grids, or with fewer ticks in a step, chance
    // would find such places anywhere.
    private const int FinestRounded = 12;
    private const int FewestTicksOfRoundedStep = 8;

    private readonly int _division;
    private readonly List<long> _starts = [];
    private readonly List<Meter> _meters = [];

    private BarLines(int division) => _division = division;

    /// <summary>How many bars there are.</summary>
    public int Count => _meters.Count;

    /// <summary>The last tick of these bars.</summary>
    public long LastTick => _starts[^1] * _division / Part;

    /// <summary>The metre of a bar.</summary>
    public Meter MeterOf(int bar) => _meters[bar];

    /// <summary>How long a bar is.</summary>
    public Beats Length(int bar) => Beats.OfQuarters(_starts[bar + 1] - _starts[bar], Part);

    /// <summary>The bars up to a tick and one more; null, with a problem told, where there are too many.</summary>
    /// <param name="metres">The metres in order of time; 4/4, with a warning, before the first.</param>
    /// <param name="division">Ticks of a quarter, 1..32767.</param>
    /// <param name="end">The tick at which the last note ends.</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static BarLines? Of(IReadOnlyList<MetreEvent> metres, int division, long end, Place whole, Remarks remarks)
    {
        if (Beats.OfQuarters(end, division) > SheetLimits.LongestPiece)
        {
            remarks.Refuse(whole, $"a piece of more than {LengthWords.Quarters(SheetLimits.LongestPiece)}", "a shorter one");
            return null;
        }

        // Of several metres at one place the last holds.
        var changes = metres.Select(m => (At: At(m.Tick, division), m.Meter)).GroupBy(m => m.At).Select(same => same.Last()).OrderBy(m => m.At).ToList();
        if (changes is not [(0, _), ..])
        {
            remarks.Warn(whole, changes.Count == 0 ? "the file has no metre; 4/4 is assumed" : "the file has no metre at its beginning; 4/4 is assumed there", "a time signature");
            changes.Insert(0, (0, Assumed));
        }

        var bars = new BarLines(division);
        if (bars.Fill(changes, end * Part / division))
        {
            return bars;
        }

        remarks.Refuse(whole, "more bars than one sheet may have", string.Create(CultureInfo.InvariantCulture, $"at most {SheetLimits.MostBars}"));
        return null;
    }

    /// <summary>The place of a grid that lies nearest to a tick; the earlier of two. Bar lines are places of every grid.</summary>
    /// <param name="tick">The tick; at most the end that the bars were made for.</param>
    /// <param name="steps">Steps of the grid in a quarter.</param>
    public NearestPlace Nearest(long tick, int steps)
    {
        // Counted in units of which a tick has Part * steps, and a quarter division times as many.
        var bar = BarAt(tick);
        var quarter = (long)Part * _division;
        var offset = ((tick * Part) - (_starts[bar] * _division)) * steps;
        var length = (_starts[bar + 1] - _starts[bar]) * _division * steps;
        var step = (int)(offset / quarter);
        var (below, above) = (step * quarter, Math.Min((step + 1) * quarter, length));
        var isBelow = offset - below <= above - offset;
        var target = isBelow ? below : above;
        var place = isBelow ? new GridPlace(bar, step) : above == length ? new GridPlace(bar + 1, 0) : new GridPlace(bar, step + 1);
        return new NearestPlace(place, Ticks(Math.Abs(target - offset), target + (_starts[bar] * _division * steps), steps));
    }

    /// <summary>The next place of a grid.</summary>
    public GridPlace Next(GridPlace place, int steps) =>
        (long)(place.Step + 1) * Part < (_starts[place.Bar + 1] - _starts[place.Bar]) * steps
            ? place with { Step = place.Step + 1 }
            : new GridPlace(place.Bar + 1, 0);

    private double Ticks(long distance, long target, int steps)
    {
        var tick = (long)Part * steps;
        var isBetweenTicks = target % tick != 0 && steps <= FinestRounded && _division >= FewestTicksOfRoundedStep * steps;
        return isBetweenTicks && distance < tick ? 0 : (double)distance / tick;
    }

    private int BarAt(long tick)
    {
        var found = _starts.BinarySearch(tick * Part / _division);
        return Math.Min(found >= 0 ? found : ~found - 1, Count - 1);
    }

    private bool Fill(List<(long At, Meter Meter)> changes, long end)
    {
        var (start, next) = (0L, 0);
        _starts.Add(0);
        while (Count < 2 || _starts[^2] <= end)
        {
            while (next < changes.Count && changes[next].At <= start)
            {
                next++;
            }

            var meter = changes[next - 1].Meter;
            var bar = meter.Bar * Part;
            start = next < changes.Count ? Math.Min(start + bar.Numerator, changes[next].At) : start + bar.Numerator;
            _meters.Add(meter);
            _starts.Add(start);
            if (Count > SheetLimits.MostBars + 2)
            {
                return false;
            }
        }

        return true;
    }

    private static long At(long tick, int division) =>
        ((tick * MetrePlaces * 2) + division) / (2L * division) * (Part / MetrePlaces);
}
