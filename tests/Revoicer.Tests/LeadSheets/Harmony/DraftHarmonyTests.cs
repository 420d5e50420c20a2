using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.LeadSheets.Harmony;
using Revoicer.LeadSheets.MusicXml;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Writing.MusicXml;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Harmony;

/// <summary>
/// Drafts of the demo sheets, written as scores, read back as passages and stripped of their symbols: what chords are found
/// beside those of the sheet.
/// </summary>
public sealed class DraftHarmonyTests
{
    [Fact]
    public void The_chords_of_a_draft_are_found_again_from_its_strokes()
    {
        var (again, all) = (0, 0);
        foreach (var file in RepositoryFiles.All("leadsheets-demo", "*.*").Where(f => !f.EndsWith(".md", StringComparison.Ordinal) && !f.EndsWith(".toml", StringComparison.Ordinal)))
        {
            foreach (var sound in ShippedSounds.Names)
            {
                var made = DemoDrafts.Of(file, sound);
                var passage = Assert.IsType<Reading<Passage>.Accepted>(MusicXmlReader.Passage("draft.musicxml", MusicXmlWriting.Bytes(made))).Value;
                AssertHasAllStrokes(made, passage);
                var hits = made.Choices.Count(IsFoundIn(Chorded.WithoutSymbols(passage)));
                Assert.True(hits >= 0.6 * made.Choices.Count, $"{file}, {sound}: {hits} of {made.Choices.Count}");
                (again, all) = (again + hits, all + made.Choices.Count);
            }
        }

        Assert.True(again >= 0.85 * all, $"{again} of {all}");
    }

    private static void AssertHasAllStrokes(Arrangement made, Passage passage) => Assert.Equal(
        made.Strokes.Select(s => (s.Beat, s.Note.Midi)).Distinct().Order(),
        passage.Voices.SelectMany(passage.Heard).Select(n => (n.Start, n.Note.Midi)).Distinct().Order());

    // A draft may leave out a fifth or add a tone by its tune, so that the symbol cannot always be known: a chord counts that
    // lasts for half of the slot or longer and has the pitch classes of the symbol, or just those that are struck there.
    private static Func<Choice, bool> IsFoundIn(Passage passage)
    {
        var sheet = HarmonyFinding.Of(passage, cancel: TestContext.Current.CancellationToken).Sheet;
        var notes = passage.Voices.SelectMany(passage.Heard).ToArray();
        var found = sheet.Played.SelectMany(p => sheet.Bars[p.Written].Chords, (p, c) => c with { Start = p.Start + c.Start }).ToArray();
        return choice =>
        {
            var end = choice.Start + choice.Length;
            var struck = PitchClassSet.Of(notes.Where(n => n.Start >= choice.Start && n.Start < end).Select(n => n.Note.PitchClass));
            var symbol = Assert.IsType<ChordText.Chord>(Assert.IsType<Reading<ChordText>.Accepted>(ChordSymbolReader.Read(choice.Symbol, Place.WholeFile("draft"))).Value).Symbol;
            return found
                .Where(c => c.Symbol is { } chord && (chord.PitchClasses == symbol.PitchClasses || chord.PitchClasses == struck))
                .Sum(c => Shared(c, choice.Start, end)) >= choice.Length.Quarters / 2;
        };
    }

    private static double Shared(ChordSpan span, Beats from, Beats to)
    {
        var (start, end) = (span.Start > from ? span.Start : from, span.Start + span.Length < to ? span.Start + span.Length : to);
        return end > start ? (end - start).Quarters : 0;
    }
}
