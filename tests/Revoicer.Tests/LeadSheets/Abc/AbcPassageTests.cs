using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

public sealed class AbcPassageTests
{
    private const string TwoVoices = "X:1\nT:Kelp\nM:4/4\nL:1/4\nV:S\nV:B clef=bass\nK:C\n[V:S] C E G c | c4 |]\n[V:B] C,2 G,2 | C,4 |]\n";

    [Fact]
    public void Every_voice_is_read_in_the_bars_of_the_first()
    {
        var passage = Accepted(TwoVoices).Value;
        Assert.Equal(["S", "B"], passage.Voices.Select(v => v.Name));
        Assert.Equal("C4 1, E4 1, G4 1, C5 1, C5 4", Heard(passage, 0));
        Assert.Equal("C3 2, G3 2, C3 4", Heard(passage, 1));
        Assert.False(passage.Sheet.HasTune);
        Assert.Equal(2, passage.Sheet.Bars.Count);
        Assert.Empty(Accepted(TwoVoices).Warnings);
    }

    [Fact]
    public void A_tune_without_voices_is_a_passage_of_one()
    {
        var passage = Accepted(AbcText.Head + "\"C\"C2 [EG]2 | \"F\"F4 |]\n").Value;
        Assert.Equal("1", Assert.Single(passage.Voices).Name);
        Assert.Equal("C4 2, E4 2, G4 2 at 2, F4 4", Heard(passage, 0));
        Assert.Equal("C 4 | F 4", AbcText.Chords(passage.Sheet));
    }

    [Fact]
    public void Chord_symbols_of_another_voice_are_those_of_the_passage_and_need_no_warning()
    {
        var accepted = Accepted(TwoVoices.Replace("C,2 G,2", "\"C\"C,2 \"G7\"G,2", StringComparison.Ordinal));
        Assert.Equal("C 2, G7 2 | G7 4", AbcText.Chords(accepted.Value.Sheet));
        Assert.Empty(accepted.Warnings);
    }

    [Fact]
    public void Roll_marks_are_kept()
    {
        var bar = Accepted(AbcText.Head + "!arpeggio![CEG]2 [CEG]2 |]\n").Value.Voices[0].Bars[0];
        Assert.Equal([true, true, true, false, false, false], bar.Select(n => n.IsRolled));
    }

    [Fact]
    public void Repeats_hold_for_all_voices()
    {
        var passage = Accepted("X:1\nM:2/4\nL:1/4\nK:C\nV:1\n|: C D |1 E F :|2 G2 |]\nV:2\n|: C,2 |1 D,2 :|2 E,2 |]\n").Value;
        Assert.Equal("C4 1, D4 1, E4 1, F4 1, C4 1, D4 1, G4 2", Heard(passage, 0));
        Assert.Equal("C3 2, D3 2, C3 2, E3 2", Heard(passage, 1));
    }

    [Theory]
    [InlineData("C,2 G,2 |]", "quay.abc:9:7: voice 'B' ends before the first voice; rests fill it up; expected as many bars in all voices")]
    [InlineData("C,2 | C,4 |]", "bar 1 of voice 'B' has 2 quarters; rests fill it up or go; expected 4 quarters, as in the first voice")]
    [InlineData("C,2 G,2 z | C,4 |]", "bar 1 of voice 'B' has 5 quarters; rests fill it up or go; expected 4 quarters, as in the first voice")]
    [InlineData("C,4 | z4 | z4 |]", null)]
    public void What_a_voice_lacks_is_filled_with_rests_and_told(string bass, string? warning)
    {
        var accepted = Accepted(TwoVoices.Replace("C,2 G,2 | C,4 |]", bass, StringComparison.Ordinal));
        Assert.Equal(2, accepted.Value.Voices[^1].Bars.Count);
        Assert.Equal(warning is not null, accepted.Warnings.Any(w => warning is not null && w.ToString().Contains(warning, StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("C,2 G,2 G, | C,4 |]", "quay.abc:9:7: bar 1 of voice 'B' has 5 quarters; expected 4 quarters, as in the first voice")]
    [InlineData("C,2 G,2 | C,4 | C,4 |]", "quay.abc:9:23: voice 'B' has notes in a bar that the first voice does not have; expected the same bars in all voices")]
    [InlineData("C,2 ^^^C,2 | C,4 |", "is no note")]
    public void Notes_for_which_there_is_no_room_are_refused(string bass, string problem)
    {
        var refused = Assert.IsType<Reading<Passage>.Refused>(Read(TwoVoices.Replace("C,2 G,2 | C,4 |]", bass, StringComparison.Ordinal)));
        Assert.Contains(problem, refused.Problems[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_64_voices_are_refused_at_once()
    {
        var text = "X:1\nM:4/4\nL:1/4\nK:C\n" + string.Concat(Enumerable.Range(1, 65).Select(i => $"V:{i}\nC4|]\n"));
        var refused = Assert.IsType<Reading<Passage>.Refused>(Read(text));
        Assert.Equal(("65 voices", "at most 64"), (refused.Problems[0].Found, refused.Problems[0].Expected));
    }

    [Law(Arbitrary = [typeof(TuneGens)], MaxTest = 500)]
    public void Any_text_ends_in_a_passage_or_in_problems_with_a_place(TuneText tune)
    {
        switch (Read(tune.Text))
        {
            case Reading<Passage>.Accepted { Value: var passage }:
                Assert.NotEmpty(passage.Voices);
                Assert.All(passage.Voices, v => Assert.Equal(passage.Sheet.Bars.Count, v.Bars.Count));
                Assert.Equal(passage.Voices.Count, passage.Voices.Select(v => v.Name).Distinct().Count());
                break;
            case Reading<Passage>.Refused { Problems: var problems }:
                Assert.NotEmpty(problems);
                break;
        }
    }

    private static Reading<Passage> Read(string text) => AbcReader.Passage("quay.abc", text, SheetChoice.First);

    private static Reading<Passage>.Accepted Accepted(string text) => Read(text) switch
    {
        Reading<Passage>.Accepted accepted => accepted,
        var refused => throw new ArgumentException(string.Concat(Assert.IsType<Reading<Passage>.Refused>(refused).Problems), nameof(text)),
    };

    private static string Heard(Passage passage, int voice) => AbcText.Heard(passage.WithTune(passage.Voices[voice]));
}
