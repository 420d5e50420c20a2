using Revoicer.Comparisons;
using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>Which drafts of a comparison a picture shows that has not room for all.</summary>
internal static class DrawnSettings
{
    /// <summary>
    /// In several keys those recommended, then those in the written key; else those asked for first. In the order of the
    /// comparison.
    /// </summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="most">For how many there is room.</param>
    public static Items<ComparedSetting> Of(Comparison comparison, int most)
    {
        var chosen = comparison.Advice.Select(a => a.Chosen).ToHashSet(ReferenceEqualityComparer.Instance);
        var drawn = comparison.Settings
            .Where(s => s.Made is not null && (!comparison.HasKeys || chosen.Contains(s) || s.Setting.Semitones == 0))
            .OrderBy(s => chosen.Contains(s) ? 0 : 1)
            .Take(most)
            .ToHashSet(ReferenceEqualityComparer.Instance);
        return comparison.Settings.Where(drawn.Contains).ToItems();
    }
}
