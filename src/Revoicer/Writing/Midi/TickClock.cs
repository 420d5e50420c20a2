using System.Numerics;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Smf;
using Revoicer.Values;

namespace Revoicer.Writing.Midi;

/// <summary>
/// Where the places of an arrangement stand in a MIDI file. Bars stand on bar lines: the file begins with the first bar,
/// and only where a stroke comes before it (a roll into the first beat) with as many whole beats of lead-in as hold it.
/// </summary>
internal sealed class TickClock
{
    // A quarter in ticks where the piece asks for nothing finer: exact to 64th notes, their triplets and quintuplets.
    private const int Usual = 960;

    // How far the last chord may ring: two bars after the last one.
    private const int BarsOfRing = 2;

    private readonly TempoMap _tempi;

    private TickClock(Arrangement arrangement)
    {
        _tempi = arrangement.Tempi;
        Meter = arrangement.Bars[0].Meter;
        var end = arrangement.Bars.Select(b => b.Start + b.Length)
            .Concat(arrangement.Strokes.Select(s => s.Beat))
            .Concat(arrangement.Tempi.Changes.Select(c => c.From))
            .Max() + (arrangement.Bars[^1].Meter.Bar * BarsOfRing);
        var early = arrangement.Strokes.Select(s => QuartersBefore(s.Beat, s.Lead) - s.Beat.Quarters).Append(0).Max();
        TicksPerQuarter = DivisionFor(arrangement, end, early > 0 ? early + Meter.Beat.Quarters : 0);
        LeadInBeats = BeatsBeforeTheFirst(arrangement.Strokes);
        End = At(end);
    }

    /// <summary>Ticks of a quarter note, 1..32767.</summary>
    public int TicksPerQuarter { get; }

    /// <summary>Beats of the first metre that stand before the first bar; mostly none.</summary>
    public long LeadInBeats { get; }

    /// <summary>The metre in which the piece begins.</summary>
    public Meter Meter { get; }

    /// <summary>The tick of the end, ring included.</summary>
    public long End { get; }

    private long LeadIn => LeadInBeats * BeatTicks;

    private long BeatTicks => Math.Max(1, Nearest(Meter.Beat));

    public static TickClock Of(Arrangement arrangement) => new(arrangement);

    /// <summary>The tick of a place in the piece as heard.</summary>
    public long At(Beats place) => LeadIn + Nearest(place);

    /// <summary>The tick of a stroke: that of its beat, less its lead to the nearest tick.</summary>
    public long At(Stroke stroke) => LeadIn + WithoutLeadIn(stroke);

    /// <summary>The tick at which a stroke has sounded for a time, through all changes of tempo on the way; later than its own.</summary>
    public long After(Stroke stroke, Seconds time)
    {
        var at = _tempi.At(stroke.Beat) - stroke.Lead + time;
        var change = _tempi.Changes.LastOrDefault(c => _tempi.At(c.From) <= at, _tempi.Changes[0]);
        var quarters = change.From.Quarters + ((at - _tempi.At(change.From)).Value * change.Tempo.QuartersPerMinute / 60);
        return Math.Max(At(stroke) + 1, LeadIn + (long)Math.Round(quarters * TicksPerQuarter));
    }

    private long WithoutLeadIn(Stroke stroke) =>
        Nearest(stroke.Beat) - (long)Math.Floor((QuartersBefore(stroke.Beat, stroke.Lead) * TicksPerQuarter) + 0.5);

    private long BeatsBeforeTheFirst(Items<Stroke> strokes)
    {
        var earliest = strokes.Select(WithoutLeadIn).Append(0).Min();
        return (-earliest + BeatTicks - 1) / BeatTicks;
    }

    // How many quarters lie in the time just before a place, through all changes of tempo on the way back.
    private double QuartersBefore(Beats place, Seconds time)
    {
        var (quarters, left) = (0.0, time.Value);
        for (var i = _tempi.Changes.Count - 1; i >= 0; i--)
        {
            var change = _tempi.Changes[i];
            if (i > 0 && change.From >= place)
            {
                continue;
            }

            var stretch = change.Tempo.Of(place - change.From).Value;
            if (i == 0 || stretch >= left)
            {
                return quarters + (left * change.Tempo.QuartersPerMinute / 60);
            }

            (quarters, left, place) = (quarters + (place - change.From).Quarters, left - stretch, change.From);
        }

        return quarters;
    }

    private long Nearest(Beats place)
    {
        var doubled = ((Int128)place.Numerator * TicksPerQuarter * 2) + place.Denominator;
        var whole = Int128.DivRem(doubled, (Int128)place.Denominator * 2);
        return (long)(whole.Remainder < 0 ? whole.Quotient - 1 : whole.Quotient);
    }

    // The coarsest division of at least 960 in which every place of the piece falls on a tick. Where even the finest that
    // the file format has does not do (tuplets of 7, 11 and 13 in one piece), places go to the nearest tick.
    private static int DivisionFor(Arrangement arrangement, Beats end, double quartersOfLeadIn)
    {
        // The track may be silent from end to end. The small addition undoes the rounding of the quotient.
        var most = (int)Math.Min(SmfNumbers.LargestDivision, (SmfNumbers.LargestQuantity / Math.Max(1, end.Quarters + quartersOfLeadIn)) + 1e-6);
        var places = arrangement.Bars.SelectMany(b => new[] { b.Start, b.Length })
            .Concat(arrangement.Strokes.Select(s => s.Beat))
            .Concat(arrangement.Tempi.Changes.Select(c => c.From))
            .Append(end);
        var common = places.Select(p => p.Denominator).Distinct().Aggregate(BigInteger.One, LeastCommonMultiple);
        var fine = LeastCommonMultiple(common, Usual);
        if (fine <= most)
        {
            return (int)fine;
        }

        var fewest = common * ((Usual + common - 1) / common);
        return fewest <= most ? (int)fewest : Math.Max(1, most);
    }

    private static BigInteger LeastCommonMultiple(BigInteger a, long b) => LeastCommonMultiple(a, (BigInteger)b);

    private static BigInteger LeastCommonMultiple(BigInteger a, BigInteger b) =>
        a / BigInteger.GreatestCommonDivisor(a, b) * b;
}
