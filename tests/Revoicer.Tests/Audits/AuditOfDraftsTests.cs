using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Audits;

/// <summary>Drafts and audit held to each other on the demos.</summary>
public class AuditOfDraftsTests
{
    private static readonly Tower Tower = ShippedTowers.Default;

    public static TheoryData<string> ChordDemos => [.. RepositoryFiles.All("leadsheets-demo", "*.chords")];

    public static TheoryData<string> TuneDemos =>
        [.. RepositoryFiles.All("leadsheets-demo", "*.abc"), .. RepositoryFiles.All("leadsheets-demo", "*.musicxml")];

    public static TheoryData<string> Demos => [.. ChordDemos, .. TuneDemos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void The_audit_of_a_draft_has_the_figures_of_the_draft(string file)
    {
        var made = DemoDrafts.Of(file);
        var audit = Auditing.Of(made, Tower, ShippedSounds.Default, cancel: TestContext.Current.CancellationToken);
        var totals = audit.Totals;
        Assert.Equal(made.Totals.ClashDose, totals.ClashDose);
        Assert.Equal(made.Totals.TuneDose, totals.TuneDose);
        Assert.Equal(made.Totals.MedianClash, totals.MedianClash);
        Assert.Equal(made.Totals.Carry, totals.Carry);
        Assert.Equal(made.Totals.Brightness, totals.Brightness);
        Assert.Equal(made.Totals.Fatigue, totals.Fatigue);
        Assert.Equal(made.Totals.BellsUsed, totals.BellsUsed);
        Assert.Equal((made.Totals.HeaviestFrom, made.Totals.HeaviestStrokes), (totals.HeaviestFrom, totals.HeaviestStrokes));
        Assert.Equal(made.Choices.Select(c => (c.Bar, c.Pass, c.Beat, c.Symbol, c.Clash, c.Dose)), audit.Chords.Select(c => (c.Bar, c.Pass, c.Beat, c.Symbol ?? "", c.Clash, c.Dose)));
        Assert.Equal(made.Choices.Select(c => c.Quarrels), audit.Chords.Select(c => c.Quarrels));
        Assert.Equal(made.Strokes, audit.Strokes);
        Assert.Empty(audit.Unplayable);
        Assert.Empty(audit.Told);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Carry_at_equal_touch_is_that_of_the_same_strokes_all_at_0_dB(string file)
    {
        var made = Passages.Draft(Passages.Sheet(file));
        var alike = made with
        {
            Strokes = Alike(made.Strokes),
            Choices = made.Choices.Select(c => c with { Strokes = Alike(c.Strokes) }).ToItems(),
        };
        Assert.Equal(made.Totals.CarryAtEqualTouch, Auditing.Of(alike, Tower, ShippedSounds.Default, cancel: TestContext.Current.CancellationToken).Totals.Carry);
        Assert.NotEqual(made.Totals.Carry, made.Totals.CarryAtEqualTouch);

        static Items<Stroke> Alike(Items<Stroke> strokes) => strokes.Select(s => s with { Level = Decibels.Zero }).ToItems();
    }

    [Theory]
    [MemberData(nameof(ChordDemos))]
    public void Chords_without_a_tune_written_down_and_read_back_have_the_same_figures(string file)
    {
        // A score has neither limbs nor touch: the limbs are found anew, and the touch of chords follows from the bells.
        var made = DemoDrafts.Of(file);
        var audit = Audit(made, ShippedSounds.Default);
        Assert.Equal(made.Strokes.Select(Bare), audit.Strokes.Select(Bare));
        Assert.Equal(made.Totals.ClashDose, audit.Totals.ClashDose, 9);
        Assert.Equal(made.Totals.MedianClash, audit.Totals.MedianClash, 9);
        Assert.Equal(made.Totals.Carry.Value, audit.Totals.Carry.Value, 9);
        Assert.Equal(made.Totals.Brightness.Value, audit.Totals.Brightness.Value, 9);
        Assert.Empty(audit.Unplayable);
    }

    [Theory]
    [MemberData(nameof(TuneDemos))]
    public void With_a_tune_the_dose_read_back_differs_by_the_touch_of_the_tune(string file)
    {
        // Nothing in a score says that the tune is struck louder, so the audit cannot know; in a sound that strikes all alike
        // nothing is left of the difference.
        var sheet = Passages.Sheet(file);
        var made = Passages.Draft(sheet);
        var audit = Audit(made, ShippedSounds.Default);
        var (with, without) = (made.Totals.ClashDose + made.Totals.TuneDose, audit.Totals.ClashDose);
        var touch = ShippedSounds.Default.TuneTouch.AmplitudeFactor;
        Assert.InRange(with / without, 1, touch * touch);
        Assert.Empty(audit.Unplayable);

        var plain = ShippedSounds.Default with { TuneTouch = Decibels.Zero, HeavyTouch = Decibels.Zero };
        var even = Passages.Draft(sheet, plain);
        var heard = Audit(even, plain);
        Assert.Equal(even.Totals.ClashDose + even.Totals.TuneDose, heard.Totals.ClashDose, 6);
        Assert.Equal(even.Strokes.Select(Bare), heard.Strokes.Select(Bare));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void The_limbs_found_for_a_draft_take_no_more_effort_than_its_own(string file)
    {
        var made = DemoDrafts.Of(file);
        var chords = made.Strokes.GroupBy(s => s.Beat).OrderBy(c => c.Key).Select(c => c.OrderBy(s => s.Note).ToArray()).ToArray();
        Items<LineNote>[] notes = [.. chords.Select(c => c.Select(s => new LineNote(s.Note, s.At)).ToItems())];
        var own = PassageLimbs.EffortOf(Tower, notes, [.. chords.Select(c => c.Select(s => s.Limb).ToItems())]);
        Assert.InRange(PassageLimbs.EffortOf(Tower, notes, PassageLimbs.Of(Tower, notes, cancel: TestContext.Current.CancellationToken)), 0, own);
    }

    private static AuditReport Audit(Arrangement made, Sound sound)
    {
        var passage = Passages.ReadBack(made);
        return Auditing.Of(passage, passage.Sheet, Tower, sound, null, cancel: TestContext.Current.CancellationToken);
    }

    // Where its place is exact, its time is the same but for the rounding of sums.
    private static (int Midi, Beats Beat, double At) Bare(Stroke stroke) => (stroke.Note.Midi, stroke.Beat, Math.Round(stroke.At.Value, 9));
}
