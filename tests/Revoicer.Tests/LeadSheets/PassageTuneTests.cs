using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Tests.LeadSheets.Abc;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets;

public sealed class PassageTuneTests
{
    private const string Head = "X:1\nM:4/4\nL:1/4\nK:C\n";

    [Theory]
    [InlineData("a b c' b | c'4 |]", "c d e d | c4 |]", "A5 1, B5 1, C6 1, B5 1, C6 4", "voice '1', the first, which is on top")]
    [InlineData("c d e d | c4 |]", "a b c' b | c'4 |]", "A5 1, B5 1, C6 1, B5 1, C6 4", "the top line over all 2 voices")]
    [InlineData("[ce] d e d | c4 |]", "E F G F | E4 |]", "E5 1, D5 1, E5 1, D5 1, C5 4", "the top line over all 2 voices")]
    public void The_first_voice_has_the_tune_if_it_is_on_top_and_alone_else_the_top_line_is_it(string first, string second, string tune, string words)
    {
        var found = PassageTune.Of(Passage($"V:1\n{first}\nV:2\n{second}\n"), null)!;
        Assert.Equal(words, found.Voice);
        Assert.Equal(tune, AbcText.Heard(found.Sheet));
    }

    [Fact]
    public void The_top_line_leaves_out_what_is_struck_below_a_note_that_still_sounds()
    {
        var found = PassageTune.Of(Passage("V:1\n[CE]2 [DF]2 | z4 | G4 |]\nV:2\nc3 B | z2 A2 | z G2 z |]\n"), null)!;

        // G4 in the third bar is struck by the second voice while that of the first still sounds.
        Assert.Equal("C5 3, B4 1, A4 2 at 6, G4 4", AbcText.Heard(found.Sheet));
        Assert.Equal("C4 0, E4 0, D4 2, F4 2, G4 9", string.Join(", ", found.Rest.Select(n => $"{n.Note} {n.Start}")));
    }

    // Common practice: where soprano and alto meet on a note that the alto holds, the soprano sings it all the same.
    [Fact]
    public void A_unison_with_a_held_voice_is_the_tunes()
    {
        var found = PassageTune.Of(Passage("V:1\n[Gc] [FG] E2 | [FG]4- | G4 |]\nV:2\nC E2 C | E4 | [EG]4 |]\n"), null)!;
        Assert.Equal("C5 1, G4 1, E4 2, G4 8", AbcText.Heard(found.Sheet));
        Assert.Equal("C4 0, G4 0, E4 1, F4 1, C4 3, E4 4, F4 4, E4 8, G4 8", string.Join(", ", found.Rest.Select(n => $"{n.Note} {n.Start}")));
    }

    [Fact]
    public void Nothing_sounds_above_the_top_line_of_a_hymn_and_what_sounds_above_all_else_is_in_it()
    {
        var unisons = 0;
        foreach (var (name, passage) in Hymns.All())
        {
            HeardNote[] all = [.. passage.Voices.SelectMany(passage.Heard).Where(n => n.Pass == 1)];
            var line = passage.Heard(TopLine.Of(passage).Tune).Where(n => n.Pass == 1).Select(n => (n.Start, n.Note)).ToHashSet();
            foreach (var note in all)
            {
                HeardNote[] with = [.. all.Where(o => o.Start <= note.Start && o.End > note.Start && o.Note >= note.Note)];
                var isFirst = passage.Heard(passage.Voices[0]).Contains(note);
                var isIn = line.Contains((note.Start, note.Note));
                Assert.True(isIn ? with.All(o => o.Note == note.Note) : with.Length > 1 && (!isFirst || with.Any(o => o.Note > note.Note)), $"{name}: {note.Note} at {note.Start}");
                unisons += isIn && isFirst && with.Any(o => o.Start < note.Start) ? 1 : 0;
            }
        }

        // That there are such places at all: two in Faith of Our Fathers.
        Assert.True(unisons >= 2, $"{unisons} unisons with a held voice");
    }

    [Fact]
    public void Ties_into_a_second_ending_stay_with_their_note()
    {
        const string Music = "V:1\n|: [CE]2 [CE]2 |1 [DF]4 :|2 [EG]4 |]\nV:2\n|: c2 d2- |1 d4 :|2 d4 |]\n";
        var found = PassageTune.Of(Passage(Music), null)!;
        Assert.Equal("C5 2, D5 6, C5 2, D5 6", AbcText.Heard(found.Sheet));
        Assert.All(found.Rest, n => Assert.True(n.Note.Midi < 72));
    }

    [Theory]
    [InlineData("2", "V2")]
    [InlineData("v1", "V1")]
    [InlineData("V2", "V2")]
    public void A_voice_is_asked_for_by_name_or_number(string asked, string name)
    {
        var passage = Passage("V:V1\nc4 |]\nV:V2\nC2 D2 |]\n");
        var found = PassageTune.Of(passage, asked)!;
        Assert.Equal($"voice '{name}', as asked for", found.Voice);
        Assert.Equal(passage.WithTune(passage.Voices.Single(v => v.Name == name)), found.Sheet);
        Assert.Equal(passage.Heard(passage.Voices.Single(v => v.Name != name)), found.Rest);
        Assert.Null(PassageTune.Of(passage, "V3"));
        Assert.Null(PassageTune.Of(passage, "0"));
    }

    [Fact]
    public void Tune_and_rest_are_the_whole_passage_for_every_hymn()
    {
        var first = 0;
        foreach (var (name, passage) in Hymns.All())
        {
            var found = PassageTune.Of(passage, null)!;
            first += found.Voice.StartsWith("voice", StringComparison.Ordinal) ? 1 : 0;
            var line = TopLine.Of(passage);
            Assert.Equal(
                passage.Voices.SelectMany(passage.Heard).OrderBy(n => n.Start).ThenBy(n => n.Note).ThenBy(n => n.Length),
                found.Rest.Concat(HeardTune.Of(found.Sheet)).OrderBy(n => n.Start).ThenBy(n => n.Note).ThenBy(n => n.Length));
            Assert.Equal(
                passage.Voices.SelectMany(passage.Heard).Count(),
                passage.Heard(line.Tune).Count + line.Others.Sum(v => passage.Heard(v).Count));
        }

        // Common practice: in a hymn in four voices the tune is the soprano's.
        Assert.InRange(first, 67, 70);
    }

    private static Passage Passage(string music) =>
        Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage("quay.abc", Head + music, SheetChoice.First)).Value;
}
