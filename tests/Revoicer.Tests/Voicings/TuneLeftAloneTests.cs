using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

/// <summary>The tune is heard as written: nothing takes its next bell just before it, and nothing lies over it where it rests. Common practice.</summary>
public sealed class TuneLeftAloneTests
{
    private static readonly Tower Harbour = ShippedTowers.Default;

    [Theory]
    [InlineData("fog-on-the-outer-pier.abc", "balanced")]
    [InlineData("fog-on-the-outer-pier.abc", "full")]
    [InlineData("round-the-breakwater.abc", "bright")]
    [InlineData("round-the-breakwater.abc", "balanced")]
    public void No_draft_strikes_the_tunes_next_bell_within_a_beat_before_it(string file, string sound)
    {
        var sheet = RevoicingTests.Read(file, RepositoryFiles.Text("leadsheets-demo", file));
        var made = Assert.IsType<Drafting.Made>(Revoicing.Draft(
            sheet, Harbour, ShippedSounds.Named(sound), DraftWish.None, null, TestContext.Current.CancellationToken)).Arrangement;
        var tune = made.Strokes.Where(s => s.IsTune).ToArray();
        var beat = made.Bars[0].Meter.Beat;

        Assert.NotEmpty(tune);
        Assert.All(made.Strokes.Where(s => !s.IsTune), stroke =>
        {
            var next = tune.FirstOrDefault(t => t.At > stroke.At);
            Assert.False(next is not null && next.Note == stroke.Note && next.Beat - stroke.Beat <= beat, $"{stroke}");
        });
    }

    // The tune leaves E5 for a rest of three beats. Under it a chord may be struck later, below E5.
    [Fact]
    public void Where_the_tune_rests_nothing_lies_on_the_note_it_has_left_or_over_it()
    {
        var slot = Plan("\"C\"e z3 | \"F\"c4 |]").Slots[0];
        var later = TuneSlots.List(slot, Harbour).SelectMany(c => c.Strokes).Where(s => s.After >= Beats.OfQuarters(1)).Select(s => s.Note).ToHashSet();

        Assert.NotEmpty(later);
        Assert.All(later, note => Assert.True(note < WrittenNote.AtMidi(76), $"{note}"));
        Assert.Contains(WrittenNote.AtMidi(67), later);
    }

    [Fact]
    public void Before_the_tune_begins_nothing_lies_on_its_first_note_or_over_it()
    {
        var slot = Plan("\"C\"z3 e | \"F\"c4 |]").Slots[0];
        var first = TuneSlots.List(slot, Harbour).SelectMany(c => c.Strokes).Where(s => s.After == Beats.Zero).Select(s => s.Note).ToHashSet();

        Assert.NotEmpty(first);
        Assert.All(first, note => Assert.True(note < WrittenNote.AtMidi(76), $"{note}"));
    }

    // G4 comes a beat after the chord is struck, so the chord leaves it alone; with two beats between it may be struck.
    [Theory]
    [InlineData("\"C\"e G3 | \"F\"c4 |]", false)]
    [InlineData("\"C\"e2 G2 | \"F\"c4 |]", true)]
    public void The_bell_that_the_tune_strikes_a_beat_later_is_left_to_it(string music, bool isOpen)
    {
        var together = TuneSlots.List(Plan(music).Slots[0], Harbour).Where(c => c.Figure == Figure.Together);

        Assert.Equal(isOpen, together.Any(c => c.Notes.Contains(WrittenNote.AtMidi(67))));
    }

    private static SlotPlan Plan(string music) => TuneSlots.Plan(TuneSlots.Sheet(music), Harbour);
}
