using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.LeadSheets;

public class FeetVoiceTests
{
    private const string Head = "X:1\nT:Quay\nM:4/4\nL:1/4\nQ:1/4=60\nK:C\n";

    // "Ped." under a staff is what keyboard music for the feet is marked with (common practice).
    [Theory]
    [InlineData("V:Ped.", true)]
    [InlineData("V:pedals", true)]
    [InlineData("V:2 name=\"Carillon, feet\"", true)]
    [InlineData("V:2 nm=\"Pedal\"", true)]
    [InlineData("V:Bass", false)]
    [InlineData("V:pedestrian", false)]
    public void A_voice_says_by_its_name_that_it_is_for_the_feet(string voice, bool isForFeet)
    {
        var passage = Read(voice);
        Assert.Equal([false, isForFeet], passage.WithFeet(null)!.Voices.Select(v => v.IsForFeet));
        Assert.Equal(isForFeet, passage.WithFeet(null)!.Heard(passage.WithFeet(null)!.Voices[1])[0].IsForFeet);
    }

    [Fact]
    public void The_voice_that_is_asked_for_is_for_the_feet_and_no_other()
    {
        var passage = Read("V:Ped.");
        Assert.Equal([true, false], passage.WithFeet("1")!.Voices.Select(v => v.IsForFeet));
        Assert.Equal([false, true], passage.WithFeet("ped.")!.Voices.Select(v => v.IsForFeet));
        Assert.Null(passage.WithFeet("trumpet"));
    }

    // C4 E4 G4: a hand would take the C, which is a pedal too (tower of 47 bells).
    [Theory]
    [InlineData("V:B", false)]
    [InlineData("V:Pedals", true)]
    public void What_is_written_for_the_feet_is_theirs_where_they_can_take_it(string voice, bool isPedal)
    {
        var audit = Audit(Read(voice), null);
        Assert.Equal(isPedal, audit.Strokes.Where(s => s.Note.Midi == 60).All(s => s.IsPedal));
        Assert.True(audit.IsPlayable);
    }

    [Fact]
    public void What_no_foot_can_take_goes_to_a_hand()
    {
        var stroke = Assert.Single(Audit(Read("V:Pedals", "c'4"), null).Strokes, s => s.Note.Midi == 84);
        Assert.False(stroke.IsPedal);
    }

    // C4 is a pedal and a baton; what stays as it was stays with the feet, too.
    [Fact]
    public void What_stays_as_it_was_stays_with_the_feet()
    {
        var passage = Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage(
            "quay.abc", $"{Head}V:1\n\"C\"c'4|\"G\"b4|]\nV:Pedals\nC4|D4|]\nV:2\nG4|G4|]\n", SheetChoice.First)).Value.WithFeet(null)!;
        var revoicing = PassageRevoicing.Of(passage, "1")!;
        var made = Assert.IsType<Revoicer.Arrangements.Drafting.Made>(Revoicing.Draft(
            revoicing.Sheet, ShippedTowers.Default, ShippedSounds.Default, revoicing.Close(DraftWish.None, 1), null, TestContext.Current.CancellationToken)).Arrangement;
        Assert.Contains(made.Choices, c => c.Former!.IsKept);
        Assert.All(made.Choices.Where(c => c.Former!.IsKept), c => Assert.Equal([true], c.Strokes.Where(s => s.Note.Midi is 60 or 62).Select(s => s.IsPedal)));
    }

    // A draft's tune is struck with the sound's touch of a tune, so a passage's is too, and the two can be compared.
    [Fact]
    public void The_voice_that_has_the_tune_gets_the_touch_of_a_tune()
    {
        var passage = Read("V:Pedals");
        var (plain, told) = (Audit(passage, null), Audit(passage, "1"));
        var sound = ShippedSounds.Default;
        Assert.All(told.Strokes.Where(s => s.IsTune), s => Assert.Equal(sound.TuneTouch, s.Level));
        Assert.Equal(told.Strokes.Where(s => !s.IsTune).Select(s => s.Level), plain.Strokes.Where(s => s.Note.Midi == 60).Select(s => s.Level));
        Assert.DoesNotContain(plain.Strokes, s => s.Level == sound.TuneTouch);
    }

    private static AuditReport Audit(Passage passage, string? voice)
    {
        var known = passage.WithFeet(null)!;
        return Auditing.Of(known, known.Sheet, ShippedTowers.Default, ShippedSounds.Default, null, voice is null ? null : PassageTune.Of(known, voice), cancel: TestContext.Current.CancellationToken);
    }

    private static Passage Read(string voice, string low = "C4") => Assert.IsType<Reading<Passage>.Accepted>(
        AbcReader.Passage("quay.abc", $"{Head}V:1\n[EG]4|]\n{voice}\n{low}|]\n", SheetChoice.First)).Value;
}
