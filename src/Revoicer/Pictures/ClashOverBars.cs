using Revoicer.Arrangements;
using Revoicer.Comparisons;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Text;

namespace Revoicer.Pictures;

/// <summary>The clash of every chord over the bars as heard, what the tune clashes with itself left out, a line for each setting of a comparison.</summary>
/// <param name="Bars">The bars as heard, in order.</param>
/// <param name="Lines">The lines; at least one, no more than <see cref="MostLines"/>.</param>
/// <param name="HasTune">Whether there is a tune, so that something is left out.</param>
/// <param name="LeftOut">How many drafts have no line.</param>
public sealed record ClashOverBars(Items<ArrangedBar> Bars, Items<ClashLine> Lines, bool HasTune, int LeftOut)
{
    /// <summary>How many lines can be told apart without colour.</summary>
    public const int MostLines = 5;

    /// <summary>
    /// The lines of a comparison: in several keys those of the recommended and the written keys, else of all in the order asked
    /// for, as many as there are lines.
    /// </summary>
    /// <param name="comparison">The comparison.</param>
    /// <returns>Null where there is no draft.</returns>
    public static ClashOverBars? Of(Comparison comparison)
    {
        var drawn = DrawnSettings.Of(comparison, MostLines);
        return drawn.Count == 0
            ? null
            : new ClashOverBars(
                drawn[0].Made!.Arrangement.Bars,
                drawn.Select(s => LineOf(VisibleText.OneLine(SettingNames.Of(comparison, s)), s.Made!.Arrangement)).ToItems(),
                drawn[0].Made!.Arrangement.Layout is not null,
                comparison.Settings.Count(s => s.Made is not null) - drawn.Count);
    }

    private static ClashLine LineOf(string name, Arrangement draft) => new(name, draft.Choices.Select(c => ChordOf(draft.Bars, c)).ToItems());

    // A place is told in bars as heard: 2.5 is half-way through the third.
    private static ClashOfChord ChordOf(Items<ArrangedBar> bars, Choice choice) =>
        new(Place(bars, choice.Start), Place(bars, choice.Start + choice.Length), choice.Clash.Avoidable);

    private static double Place(Items<ArrangedBar> bars, Music.Beats place)
    {
        var bar = Math.Max(0, bars.Count(b => b.Start <= place) - 1);
        return Math.Min(bars.Count, bar + ((place - bars[bar].Start).Quarters / bars[bar].Length.Quarters));
    }
}
