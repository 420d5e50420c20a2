using Revoicer.Values;

namespace Revoicer.Comparisons;

/// <summary>One figure of a comparison, and which way it is better.</summary>
/// <param name="Name">Its name in files: "clashDose".</param>
/// <param name="Better">Which way it is better.</param>
/// <param name="Decimals">How many decimals are shown; what is shown alike counts as equal.</param>
/// <param name="Of">Its value; null where a draft has none.</param>
public sealed record Measure(string Name, Better Better, int Decimals, Func<SettingFigures, double?> Of)
{
    /// <summary>The name of the clash dose, which depends on the fade of the sound.</summary>
    public const string ClashDose = "clashDose";

    /// <summary>The name of the clash of the worst chord, beside which its place is told.</summary>
    public const string Worst = "worst";

    /// <summary>The name of the share of strong beats with a bass bell, beside which it is said of how many.</summary>
    public const string StrongBeats = "strongBeatsWithBass";

    /// <summary>The measures in the order of the table; shares are in hundredths.</summary>
    public static Items<Measure> All { get; } =
    [
        new(ClashDose, Better.Less, 1, f => f.ClashDose),
        new("medianClash", Better.Less, 1, f => f.MedianClash),
        new(Worst, Better.Less, 1, f => f.Worst.Clash.Avoidable),
        new("carry", Better.More, 1, f => f.Carry.Value),
        new("carryAtEqualTouch", Better.More, 1, f => f.CarryAtEqualTouch.Value),
        new("brightness", Better.Neither, 0, f => f.Brightness.Value),
        new("effort", Better.Less, 1, f => f.Effort),
        new("rolls", Better.Neither, 0, f => f.Rolls),
        new("inversions", Better.Neither, 0, f => f.Inversions),
        new("tenthsAndWider", Better.Neither, 0, f => 100 * f.TenthsAndWider),
        new(StrongBeats, Better.More, 0, f => 100 * f.StrongBeats?.Share),
        new("strokes", Better.Neither, 0, f => f.Strokes),
        new("silentChords", Better.Neither, 0, f => f.SilentChords),
        new("singleStrokes", Better.Neither, 0, f => f.SingleStrokes),
    ];

    /// <summary>
    /// Which of some drafts are the best by this measure: of equals all; none where it has no direction, or where all that
    /// have the figure are alike.
    /// </summary>
    /// <param name="drafts">The drafts; null where there is none.</param>
    /// <returns>Their places, rising.</returns>
    public Items<int> Best(IReadOnlyList<SettingFigures?> drafts)
    {
        var shown = drafts.Index()
            .Select(d => (d.Index, Value: d.Item is { } figures ? Shown(figures) : null))
            .Where(d => d.Value is not null)
            .ToArray();
        if (Better == Better.Neither || shown.Select(d => d.Value).Distinct().Count() < 2)
        {
            return [];
        }

        var best = Better == Better.Less ? shown.Min(d => d.Value) : shown.Max(d => d.Value);
        return shown.Where(d => d.Value == best).Select(d => d.Index).ToItems();
    }

    /// <summary>The value rounded as it is shown; never a negative zero.</summary>
    public double? Shown(SettingFigures figures) => Of(figures) is { } value ? Math.Round(value, Decimals) + 0.0 : null;
}
