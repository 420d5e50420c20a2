using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Text;

namespace Revoicer.Pictures;

/// <summary>One chord of a sheet as several settings take it.</summary>
/// <param name="Place">Where it stands, and its symbol: "Bar 3, beat 1: B7".</param>
/// <param name="Strips">The settings; at least one, no more than <see cref="MostStrips"/>.</param>
/// <param name="LeftOut">How many drafts have no strip.</param>
public sealed record ChordStrips(string Place, Items<ChordStrip> Strips, int LeftOut)
{
    /// <summary>How many strips one sheet of paper holds.</summary>
    public const int MostStrips = 3;

    /// <summary>The chords that begin in a bar, at their first hearing, by their beat; of the settings those that <see cref="ClashOverBars"/> shows first.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="towerOf">The tower of a setting.</param>
    /// <param name="bar">The bar's number.</param>
    public static Items<(double Beat, ChordStrips Strips)> InBar(Comparison comparison, Func<ComparedSetting, Tower> towerOf, int bar)
    {
        var drawn = DrawnSettings.Of(comparison, MostStrips);
        return drawn
            .SelectMany(s => s.Made!.Arrangement.Choices.Where(c => c.Bar == bar && c.Pass == 1), (s, c) => (Setting: s, Choice: c))
            .GroupBy(f => f.Choice.Beat)
            .OrderBy(g => g.Key)
            .Select(beat => (beat.Key, new ChordStrips(
                PlaceOf(comparison, beat.First().Choice),
                beat.Select(f => ChordStrip.Of(VisibleText.OneLine(SettingNames.Of(comparison, f.Setting)), f.Setting.Made!.Arrangement, f.Choice, towerOf(f.Setting)))
                    .ToItems(),
                comparison.Settings.Count(s => s.Made is not null) - drawn.Count)))
            .ToItems();
    }

    // In several keys a symbol is another in each.
    private static string PlaceOf(Comparison comparison, Choice choice) =>
        Sentences.Capital(PlaceNames.Of(choice.Bar, choice.Pass, choice.Beat)) + (comparison.HasKeys ? "" : $": {choice.Symbol}");
}
