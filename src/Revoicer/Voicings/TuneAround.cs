using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>What of the tune a slot has to do with.</summary>
internal static class TuneAround
{
    /// <summary>The tune between two places, counted from the first: stretches of a sheet under the same tune are one slot.</summary>
    public static Items<(WrittenNote Note, Limb Limb, Beats After, long Microseconds)> Within(PlacedTune? tune, Beats start, Beats end) =>
        (tune?.Strokes ?? [])
            .Where(s => s.Start >= start && s.Start < end)
            .Select(s => (s.Note, s.Limb, s.Start - start, (long)Math.Round((s.Until - s.At).Value * 1e6)))
            .ToItems();

    /// <summary>
    /// The strokes around each hearing, hearings that do not differ once: as far as a limit of playing looks, what still
    /// sounds, and in any case the last stroke before it and the first after it.
    /// </summary>
    public static Items<Items<NearStroke>> Of(PlacedTune? tune, IEnumerable<(Seconds From, Seconds To)> hearings) => tune is null
        ? []
        : hearings
            .Select(h =>
            {
                var last = tune.Strokes.LastOrDefault(s => s.At <= h.From);
                var next = tune.Strokes.FirstOrDefault(s => s.At >= h.To);
                return tune.Strokes
                    .Where(s => ReferenceEquals(s, last) || ReferenceEquals(s, next)
                        || (s.At < h.To + tune.Around && (s.At > h.From - tune.Around || s.Until > h.From)))
                    .Select(s => new NearStroke(s.Note, s.Limb, Rounded(s.At - h.From), Rounded(s.Until - h.From)))
                    .ToItems();
            })
            .Distinct()
            .ToItems();

    // To a microsecond, so that hearings of one passage compare equal.
    private static Seconds Rounded(Seconds seconds) => new(Math.Round(seconds.Value, 6));
}
