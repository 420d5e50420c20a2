using Revoicer.Bells;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>Finds the pairs of partials that are roughest among some strokes.</summary>
internal static class Quarrels
{
    // Softer than this beside the later stroke's strongest partial, a partial no longer counts as heard (dB; estimate).
    private static readonly Decibels Heard = new(-20);

    public static IEnumerable<RoughPartials> Of(
        Items<Bell> bells, DoseTables tables, IReadOnlyList<Strike> strikes, Seconds from, Seconds to)
    {
        var doses = new Dictionary<(int LowerBell, int Lower, int UpperBell, int Upper), (double Dose, double Lasts)>();
        for (var a = 0; a < strikes.Count; a++)
        {
            for (var b = a + 1; b < strikes.Count; b++)
            {
                Add(bells, tables, strikes[a], strikes[b], from, to, doses);
            }
        }

        var whole = doses.Values.Sum(d => d.Dose);
        return doses
            .OrderByDescending(d => d.Value.Dose)
            .ThenBy(d => d.Key)
            .Select(d => Pair(bells, d.Key, d.Value.Dose / whole, d.Value.Lasts));
    }

    private static void Add(
        Items<Bell> bells,
        DoseTables tables,
        Strike a,
        Strike b,
        Seconds from,
        Seconds to,
        Dictionary<(int, int, int, int), (double Dose, double Lasts)> doses)
    {
        if (a.Bell == b.Bell)
        {
            return;
        }

        var (lower, higher) = a.Bell < b.Bell ? (a, b) : (b, a);
        var (earlier, later) = lower.At <= higher.At ? (lower, higher) : (higher, lower);
        var delay = later.At - earlier.At;
        var scale = lower.Level.AmplitudeFactor * higher.Level.AmplitudeFactor;
        foreach (var pair in tables.Pairs(lower.Bell, higher.Bell))
        {
            var kappaLower = tables.Kappa(lower.Bell, pair.Lower);
            var kappaHigher = tables.Kappa(higher.Bell, pair.Higher);
            var (first, second) = earlier == lower ? (kappaLower, kappaHigher) : (kappaHigher, kappaLower);
            var dose = scale
                * DoseTables.RoughnessWithin(pair, first, second, delay, from - earlier.At, to - earlier.At);
            if (dose > 0)
            {
                var key = (lower.Bell, pair.Lower, higher.Bell, pair.Higher);
                var before = doses.GetValueOrDefault(key);
                var lasts = Lasts(bells, pair, lower, higher, from);
                doses[key] = (before.Dose + dose, Math.Max(before.Lasts, lasts));
            }
        }
    }

    // What has rung on into the window has been heard before; only what is left of it there is of interest.
    private static double Lasts(Items<Bell> bells, RoughPair pair, Strike lower, Strike higher, Seconds from)
    {
        var later = lower.At <= higher.At ? higher : lower;
        var strongest = bells[later.Bell].Partials.Max(p => p.Amplitude) * later.Level.AmplitudeFactor;
        var mark = strongest * Heard.AmplitudeFactor;
        var end = Math.Min(
            FallsTo(mark, bells[lower.Bell].Partials[pair.Lower], lower),
            FallsTo(mark, bells[higher.Bell].Partials[pair.Higher], higher));
        return Math.Max(0, end - Math.Max(later.At.Value, from.Value));
    }

    // When a partial of a stroke falls to an amplitude; before the stroke where it never reaches it.
    private static double FallsTo(double amplitude, Partial partial, Strike strike) =>
        strike.At.Value + (Math.Log(partial.Amplitude * strike.Level.AmplitudeFactor / amplitude) / partial.Kappa);

    private static RoughPartials Pair(
        Items<Bell> bells, (int LowerBell, int Lower, int UpperBell, int Upper) key, double share, double lasts)
    {
        var first = (Bell: bells[key.LowerBell], Partial: bells[key.LowerBell].Partials[key.Lower]);
        var second = (Bell: bells[key.UpperBell], Partial: bells[key.UpperBell].Partials[key.Upper]);
        var (low, high) = first.Partial.Frequency.Value <= second.Partial.Frequency.Value ? (first, second) : (second, first);
        return new RoughPartials(low.Bell, low.Partial, high.Bell, high.Partial, share, new Seconds(lasts));
    }
}
