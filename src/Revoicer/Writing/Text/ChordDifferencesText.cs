using Revoicer.Arrangements;
using Revoicer.Comparisons;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>Where the drafts of a comparison part, chord by chord, and one bar of all of them.</summary>
public static class ChordDifferencesText
{
    private const int Indent = 2;

    /// <summary>
    /// For every draft the chords that it takes otherwise than the first one in its key: both in words, the clash of both, and the
    /// difference in price term by term. Lines of at most 100 characters ending in \n.
    /// </summary>
    public static string Of(Comparison comparison)
    {
        var page = new TextPage();
        page.Title("Chord by chord", '-');
        page.Paragraph(
            "A clash of 100 is that of C4 E4 G4, as heard, struck together; no setting changes how it is counted. Prices are "
            + "what each sound asks for its own voicing, so their differences say what each pays for, not which sounds better.");
        var pairs = comparison.Settings
            .Where(s => s.Made is not null)
            .GroupBy(s => s.Setting.Semitones)
            .SelectMany(key => key.Skip(1), (key, other) => (First: key.First(), Other: other))
            .ToArray();
        foreach (var (first, other) in pairs)
        {
            page.Blank();
            Between(comparison, first, other, page);
        }

        if (pairs.Length == 0)
        {
            page.Blank();
            page.Paragraph("No two drafts are in one key, so there are no chords to lay side by side.");
        }

        return page.ToString();
    }

    /// <summary>Every draft's voicings of the chords that begin in a bar; lines of at most 100 characters ending in \n. Empty where none begins there.</summary>
    public static string OfBar(Comparison comparison, int bar)
    {
        var page = new TextPage();
        var beats = comparison.Settings.SelectMany(s => In(s, bar)).Select(c => c.Beat).Distinct().Order().ToArray();
        foreach (var beat in beats)
        {
            page.Blank();
            page.Paragraph($"{Sentences.Capital(PlaceNames.Of(bar, 1, beat))}:");
            foreach (var setting in comparison.Settings)
            {
                foreach (var choice in In(setting, bar).Where(c => c.Beat == beat).Take(1))
                {
                    page.Paragraph($"{SettingNames.Of(comparison, setting)}: {Told(setting, choice)}", Indent, Indent);
                }
            }
        }

        return page.ToString();
    }

    private static IEnumerable<Choice> In(ComparedSetting setting, int bar) => setting.Made?.Arrangement.Choices.Where(c => c.Bar == bar && c.Pass == 1) ?? [];

    private static void Between(Comparison comparison, ComparedSetting first, ComparedSetting other, TextPage page)
    {
        var (name, otherName) = (SettingNames.Of(comparison, first), SettingNames.Of(comparison, other));
        var differences = ChordDifference.Between(first.Made!.Arrangement, other.Made!.Arrangement);
        var chords = first.Made.Arrangement.Choices.Count(c => c.Pass == 1);
        page.Paragraph($"{otherName} beside {name}: {(differences.Count == 0 ? "no chord is taken otherwise." : $"{differences.Count} of {chords} chords are taken otherwise.")}");
        foreach (var difference in differences)
        {
            page.Blank();
            page.Paragraph($"{Sentences.Capital(PlaceNames.Of(difference.First.Bar, 1, difference.First.Beat))}: {difference.First.Symbol}", Indent);
            page.Paragraph($"{name}: {Told(first, difference.First)}", Indent * 2, Indent);
            page.Paragraph($"{otherName}: {Told(other, difference.Other)}", Indent * 2, Indent);
            page.Paragraph(Terms(difference.Terms, otherName), Indent * 2, Indent);
        }
    }

    // "Together, on the beat: G3 (...) and B4 (...). Clash 12.1."
    private static string Told(ComparedSetting setting, Choice choice)
    {
        var chords = new RationaleChord(setting.Made!.Arrangement);
        var bass = choice.SoundingBass is null ? "" : $"{chords.Symbol(choice)}. ";
        return $"{bass}{chords.Struck(choice)} Clash {ClashWords.Of(choice.Clash)}.";
    }

    private static string Terms(Items<PricedTerm> terms, string other)
    {
        string[] told = [.. terms.Where(t => Sentences.Price(t.Thousandths) != "0.0").Select(t => $"{t.Term} {Signed(t.Thousandths)}")];
        return told.Length == 0
            ? "The two cost the same."
            : $"{other} pays {Sum(terms.Sum(t => t.Thousandths))}: {Sentences.List(told)}.";
    }

    private static string Sum(long thousandths) => thousandths switch
    {
        > 0 => $"{Sentences.Price(thousandths)} more in all",
        < 0 => $"{Sentences.Price(-thousandths)} less in all",
        _ => "as much in all",
    };

    private static string Signed(long thousandths) => $"{(thousandths > 0 ? "+" : "")}{Sentences.Price(thousandths)}";
}
