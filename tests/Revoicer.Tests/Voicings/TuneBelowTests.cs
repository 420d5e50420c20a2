using FsCheck;
using FsCheck.Fluent;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

/// <summary>The tune under the chords: what is listed over it (docs/playing.md; common practice).</summary>
public sealed class TuneBelowTests
{
    [Fact]
    public void It_is_placed_where_pedals_and_the_low_manual_have_it()
    {
        // Pedals C3 to G4, the lower half of the batons up to C5; C#3 and D#3 are missing.
        Assert.Equal([0, -1], Octaves("\"C\"C G c2|]"));
        Assert.Equal([-1], Octaves("\"C\"C G e2|]"));
        Assert.Equal([-1, -2], Octaves("\"C\"c e g2|]"));
    }

    [Fact]
    public void A_tune_that_fits_nowhere_is_told_the_other_layout()
    {
        var tower = ShippedTowers.Default;
        var sheet = TuneSlots.Sheet("\"C\"C G c' g'|]");
        var placing = new TunePlacing(sheet, tower, TuneSlots.ReachOf(tower), SheetTempi.Of(sheet, sheet.Tempo!.Value), ease: false, TuneLayout.Below);
        Assert.Empty(placing.All());
        Assert.Equal(
            "the tune goes from C4 to G6, and in no octave has Merrowhaven Harbour Tower all its bells on the pedals and in the lower half of the batons, nor in any other key; "
            + "a tower with a wider compass, or --layout above, would do",
            placing.WhereItFits());
    }

    [Fact]
    public void A_line_too_quick_for_feet_and_left_hand_is_told()
    {
        // Sixteenths at 300 quarter notes a minute: 0.05 s, so that three limbs have 0.15 s for a move; a hand needs 0.1 +
        // 0.05 log2(1 + d), a foot more (playing-limits.tsv).
        var sheet = TuneSlots.Sheet("\"C\"C/4E/4G/4B/4D/4F/4A/4c/4 z2|]", tempo: 300);
        var told = TuneSlots.Plan(sheet, ShippedTowers.Default, 0, TuneLayout.Below).Tune!.Told;
        Assert.Contains(told, t => t.Contains(": neither foot nor left hand gets to ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_roll_runs_down_into_the_tune()
    {
        var slot = Slot("\"C\"C4|\"F\"F4|]");
        var rolled = TuneSlots.List(slot, ShippedTowers.Default).First(c => c.Figure == Figure.Rolled && c.Strokes.Count == 3);
        Assert.Equal(rolled.Voicing.Notes.Reverse(), rolled.Strokes.Select(s => s.Note));
        Assert.Equal([3, 2, 1], rolled.Strokes.Select(s => s.LeadSteps));
    }

    [Fact]
    public void A_slash_bass_is_not_asked_for()
    {
        // D is no tone of C; over another bass it would have to sound.
        var slot = Slot("\"C/D\"G4|\"F\"F4|]");
        Assert.Contains(TuneSlots.List(slot, ShippedTowers.Default), c => c.Strokes.Count > 1 && !c.Voicing.PitchClasses.Contains(PitchClass.Of(2)));
    }

    [Fact]
    public void The_right_hand_may_take_two_tones_where_the_left_has_the_tune()
    {
        // A4 and B4 lie above the pedals.
        var slot = Slot("\"F\"A4|\"C\"C4|]");
        Assert.Equal([Limb.LeftHand], slot.Tunes[0].Where(s => s.After < slot.Duration).Select(s => s.Limb));
        Assert.Contains(TuneSlots.List(slot, ShippedTowers.Default), c => c.Strokes.Count == 2 && c.Strokes.All(s => s.Limb == Limb.RightHand));
    }

    [Law(MaxTest = 40)]
    public Property Every_chord_lies_a_third_above_the_tune_in_the_hands_and_can_be_played()
    {
        var tunes =
            from tower in Gen.Elements(ShippedTowers.Names.ToArray()).Select(ShippedTowers.Named)
            from tempo in Gen.Choose(40, 160)
            from chord in Gen.Elements("C", "Am", "F/C", "Dm7", "G7", "Em7b5")
            from notes in Gen.Elements("C2", "D", "E", "F", "G", "A", "c", "z", "G/2A/2").ArrayOf(3)
            let sheet = TuneSlots.Sheet($"\"{chord}\"C{string.Concat(notes)}|\"F\"F4|]", tempo: tempo)
            let fits = new TunePlacing(sheet, tower, TuneSlots.ReachOf(tower), SheetTempi.Of(sheet, sheet.Tempo!.Value), false, TuneLayout.Below).All().Select(t => t.Octaves).ToArray()
            where fits.Length > 0
            select (tower, sheet, octave: fits[0]);
        return Prop.ForAll(tunes.ToArbitrary(), drawn =>
        {
            var slot = TuneSlots.Plan(drawn.sheet, drawn.tower, drawn.octave, TuneLayout.Below).Slots[0];
            var checker = new Checker(drawn.tower);
            var listed = TuneSlots.List(slot, drawn.tower);
            Assert.All(listed.Where((_, i) => i % 7 == 0), candidate =>
            {
                Assert.DoesNotContain(candidate.Strokes, s => s.IsPedal);
                Assert.Null(candidate.Voicing.Bass);
                Assert.DoesNotContain(checker.Check(TuneSlots.Timed(slot, candidate)), b => !b.InTune);
                Assert.All(candidate.Strokes, s => Assert.All(Sounding(slot, s), tune => Assert.True(s.Note.Midi >= tune.Note.Midi + 3)));
            });
        });
    }

    // What sounds of the tune when a stroke falls.
    private static IEnumerable<NearStroke> Sounding(Slot slot, SlotStroke stroke)
    {
        var at = (slot.Duration.Value * stroke.After.Quarters / slot.Length.Quarters) - (stroke.LeadSteps * TuneSlots.RollStep.Value);
        return slot.Tunes[0].Where(t => t.After.Value <= at + 1e-6 && t.Until.Value > at + 1e-6);
    }

    private static Slot Slot(string music) => TuneSlots.Plan(TuneSlots.Sheet(music), ShippedTowers.Default, 0, TuneLayout.Below).Slots[0];

    private static IEnumerable<int> Octaves(string music)
    {
        var tower = ShippedTowers.Default;
        var sheet = TuneSlots.Sheet(music);
        return new TunePlacing(sheet, tower, TuneSlots.ReachOf(tower), SheetTempi.Of(sheet, sheet.Tempo!.Value), ease: false, TuneLayout.Below).All().Select(t => t.Octaves);
    }
}
