using Revoicer.Values;

namespace Revoicer.Comparisons;

/// <summary>A sheet drafted under several settings.</summary>
/// <param name="Title">The sheet's title.</param>
/// <param name="Settings">The settings in the order asked for; at least one.</param>
/// <param name="Advice">For each tower, sound and layout for which several keys were asked the key recommended, if any draft was made.</param>
public sealed record Comparison(string Title, Items<ComparedSetting> Settings, Items<KeyAdvice> Advice)
{
    /// <summary>Whether all sounds have one fade; where they have not, their clash doses cannot be compared.</summary>
    public bool HasOneFade { get; init; } = true;

    /// <summary>The numbers of written bars of the sheet that are never heard, each once.</summary>
    public Items<int> Unheard { get; init; } = [];

    /// <summary>Whether several keys were asked for.</summary>
    public bool HasKeys => Settings.Select(s => s.Setting.Semitones).Distinct().Count() > 1;

    /// <summary>The best drafts by a measure: places among the settings. Clash doses of several fades have no best.</summary>
    public Items<int> Best(Measure measure) => measure.Name == Measure.ClashDose && !HasOneFade
        ? []
        : measure.Best([.. Settings.Select(s => s.Figures)]);
}
