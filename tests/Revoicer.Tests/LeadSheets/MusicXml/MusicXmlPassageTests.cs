using System.Text;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.MusicXml;
using Revoicer.Text;
using Xunit;
using static Revoicer.Tests.LeadSheets.MusicXml.Score;

namespace Revoicer.Tests.LeadSheets.MusicXml;

public sealed class MusicXmlPassageTests
{
    private const string Roll = "<notations><arpeggiate/></notations>";

    [Fact]
    public void Every_voice_of_every_part_is_read()
    {
        var passage = Accepted(OfParts(
            Part("P1", Attributes + Note("C5", 8, Voice(1)) + "<backup><duration>8</duration></backup>" + Note("E4", 4, Voice(2)) + Note("F4", 4, Voice(2))),
            Part("P2", Attributes + Chord("C") + Note("C3", 8)))).Value;
        Assert.Equal(["Tune, voice 1", "Tune, voice 2", "Chords"], passage.Voices.Select(v => v.Name));
        Assert.Equal(["0 C5 4", "0 E4 2; 2 F4 2", "0 C3 4"], passage.Voices.Select(v => Tune(passage.WithTune(v))));
        Assert.Equal("1.0 C", Symbols(passage.Sheet));
    }

    [Fact]
    public void Parts_of_one_name_are_told_apart()
    {
        var score = OfParts(Part("P1", Attributes + Note("C5")), Part("P2", Attributes + Note("C4"))).Replace("Chords", "Tune", StringComparison.Ordinal);
        Assert.Equal(["Tune (part 1)", "Tune (part 2)"], Accepted(score).Value.Voices.Select(v => v.Name));
        Assert.Equal(["part 1", "part 2"], Accepted(score.Replace("Tune", "", StringComparison.Ordinal)).Value.Voices.Select(v => v.Name));
    }

    [Fact]
    public void Roll_marks_are_kept()
    {
        var bar = Accepted(Of(Attributes + Note("C4", 4, Roll) + Note("E4", 4, Roll, "<chord/>") + Note("G4", 4))).Value.Voices[0].Bars[0];
        Assert.Equal([true, true, false], bar.Select(n => n.IsRolled));
    }

    [Fact]
    public void A_part_that_ends_early_is_filled_with_rests_and_told()
    {
        var accepted = Accepted(OfParts(Part("P1", Attributes + Note("C5"), Note("D5")), Part("P2", Attributes + Note("C4"))));
        Assert.Contains("voice 'Chords' ends before the first voice", Assert.Single(accepted.Warnings).Found, StringComparison.Ordinal);
        Assert.Empty(accepted.Value.Voices[1].Bars[1]);
    }

    [Fact]
    public void A_part_with_notes_behind_the_end_of_the_first_is_refused()
    {
        var score = OfParts(Part("P1", Attributes + Note("C5")), Part("P2", Attributes + Note("C4"), Note("D4")));
        var refused = Assert.IsType<Reading<Passage>.Refused>(Read(score));
        Assert.Contains("voice 'Chords' has notes in a bar that the first voice does not have", Assert.Single(refused.Problems).Found, StringComparison.Ordinal);
        Assert.True(refused.Problems[0].Where.Line > 0);
    }

    [Fact]
    public void Places_that_fall_on_no_common_grid_are_refused_in_any_voice()
    {
        var odd = Attributes.Replace("<divisions>2", "<divisions>9973", StringComparison.Ordinal);
        var score = OfParts(Part("P1", Attributes + Note("C5"), Note("C5")), Part("P2", odd + Note("C4", 1) + Note("D4", 39_891), Attributes.Replace("<divisions>2", "<divisions>9967", StringComparison.Ordinal) + Note("C4", 1) + Note("D4", 39_867)));
        Assert.Equal(2, Accepted(score).Value.Voices.Count);
        Assert.IsType<Reading<Passage>.Refused>(Read(score.Replace("<duration>39891", "<duration>39892", StringComparison.Ordinal)));
    }

    [Fact]
    public void More_than_64_voices_are_refused()
    {
        var notes = string.Concat(Enumerable.Range(1, 65).Select(i => Note("C4", 8, Voice(i)) + "<backup><duration>8</duration></backup>"));
        var refused = Assert.IsType<Reading<Passage>.Refused>(Read(Of(Attributes + notes)));
        Assert.Equal("65 voices", Assert.Single(refused.Problems).Found);
    }

    private static string Voice(int number) => $"<voice>{number}</voice>";

    private static Reading<Passage> Read(string text) => MusicXmlReader.Passage("quay.musicxml", Encoding.UTF8.GetBytes(text));

    private static Reading<Passage>.Accepted Accepted(string text) => Read(text) switch
    {
        Reading<Passage>.Accepted accepted => accepted,
        var refused => throw new ArgumentException(string.Concat(Assert.IsType<Reading<Passage>.Refused>(refused).Problems), nameof(text)),
    };
}
