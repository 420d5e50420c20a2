using Revoicer.Clashes;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>How far the chords of an arrangement carry and how bright they sound, the tune included, what rings from before not.</summary>
internal static class HeardSound
{
    /// <summary>The mean carry of the chords that are struck, in dB re one stroke of C4 over the same time, and the brightness of all of them.</summary>
    public static (Decibels Carry, Hertz Brightness) Of(Instrument instrument, IEnumerable<ChordInTime> chords, IEnumerable<Stroke> tune)
    {
        var (energy, moment) = (0.0, 0.0);
        var carries = new List<double>();
        Stroke[] over = [.. tune.OrderBy(s => s.At.Value)];
        var first = 0;
        foreach (var (_, from, until, strokes) in chords)
        {
            while (first < over.Length && over[first].At.Value < from.Value - 1e-6)
            {
                first++;
            }

            var here = strokes.Concat(over.Skip(first).TakeWhile(s => s.At < until)).ToArray();
            var heard = here.Sum(s => Power(s) * instrument.Carry.CarryEnergy(instrument.BellAt(s.Note), Seconds.Zero, until - Later(s.At, from)));
            if (heard > 0)
            {
                carries.Add(instrument.Carry.Carry(heard, until - from).Value);
                energy += heard;
                moment += here.Sum(s => Power(s) * instrument.Carry.LogFrequency(instrument.BellAt(s.Note), Seconds.Zero, until - Later(s.At, from)));
            }
        }

        return carries.Count == 0 ? (Decibels.Zero, new Hertz(0)) : (new Decibels(carries.Average()), TowerCarry.Brightness(energy, moment));
    }

    /// <summary>The strokes, all of them at 0 dB.</summary>
    public static Items<Stroke> AtEqualTouch(Items<Stroke> strokes) => strokes.Select(s => s with { Level = Decibels.Zero }).ToItems();

    private static double Power(Stroke stroke) => Math.Pow(stroke.Level.AmplitudeFactor, 2);

    // The lead of a roll is counted as if it came on the beat, as in the price.
    private static Seconds Later(Seconds a, Seconds b) => a > b ? a : b;
}
