using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>The spectra of two bells beside each other, and the two partials that quarrel most when both are struck together.</summary>
/// <param name="Lower">The lower bell.</param>
/// <param name="Upper">The higher bell.</param>
/// <param name="Worst">The roughest pair of partials with its share in the roughness of the two bells; null where nothing is rough.</param>
public sealed record TwoSpectra(BellSpectrum Lower, BellSpectrum Upper, RoughPartials? Worst)
{
    /// <summary>The spectra of two bells of a tower.</summary>
    /// <param name="tower">The tower.</param>
    /// <param name="fade">The fade with which the quarrels are weighed.</param>
    /// <param name="lower">The strike note of the lower bell.</param>
    /// <param name="upper">The strike note of the higher bell.</param>
    /// <exception cref="ArgumentException">The tower has no such bell, or the lower one does not lie lower.</exception>
    public static TwoSpectra Of(Tower tower, Fade fade, StrikeNote lower, StrikeNote upper)
    {
        var low = BellPlaces.Find(tower, lower.Midi) ?? throw Missing(tower, lower, nameof(lower));
        var high = BellPlaces.Find(tower, upper.Midi) ?? throw Missing(tower, upper, nameof(upper));
        if (low >= high)
        {
            throw new ArgumentException($"the bell on {lower} does not lie below the one on {upper}", nameof(lower));
        }

        var bells = new[] { tower.Bells[low], tower.Bells[high] };
        var loudest = bells.Max(b => b.Partials.Max(p => p.Amplitude));
        var strikes = new[] { low, high }.Select(b => new Strike(b, Seconds.Zero, Decibels.Zero)).ToArray();
        var worst = new TowerDoses(tower, fade).Parts(strikes, ChordClasses.None, Seconds.Zero, Seconds.Forever, atMost: 1);
        return new TwoSpectra(Spectrum(bells[0], loudest), Spectrum(bells[1], loudest), worst.OfType<RoughPartials>().FirstOrDefault());
    }

    private static BellSpectrum Spectrum(Bell bell, double loudest) => new(
        bell.StrikeNote,
        bell.Partials
            .Select(p => new PartialStick(p.Name, p.Frequency, new Decibels(20 * Math.Log10(p.Amplitude / loudest)), p.Decay))
            .ToItems());

    private static ArgumentException Missing(Tower tower, StrikeNote note, string name) =>
        new($"no bell of {tower.Name} strikes {note}", name);
}
