using FsCheck;
using FsCheck.Fluent;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Playing;

public class LimbPlanTests
{
    private static readonly Reach Reach = new(PlayingLimits.Shipped, ShippedTowers.Default.Transposition);

    [Fact]
    public void A_line_with_time_stays_in_the_right_hand()
    {
        var line = Line((72, 0), (74, 1), (76, 2), (72, 3));
        Assert.All(LimbPlan.Of(Reach, LineLimbs.Hands, line), hand => Assert.Equal(Limb.RightHand, hand));
    }

    [Fact]
    public void A_quick_leap_takes_both_hands()
    {
        // An octave to and fro in 0.2 s: one hand needs 0.1 + 0.05 log2(1 + 7) = 0.25 s (playing-limits.tsv).
        var line = Line((67, 0), (79, 0.2), (67, 0.4), (79, 0.6));
        var hands = LimbPlan.Of(Reach, LineLimbs.Hands, line);
        Assert.All(hands.Zip(hands.Skip(1)), pair => Assert.NotEqual(pair.First, pair.Second));
    }

    [Fact]
    public void A_line_without_notes_needs_no_hands() => Assert.Empty(LimbPlan.Of(Reach, LineLimbs.Hands, []));

    [Law(MaxTest = 200)]
    public FsCheck.Property No_other_hands_take_less_effort()
    {
        var lines =
            from count in Gen.Choose(1, 7)
            from notes in Gen.Choose(55, 96).ArrayOf(count)
            from gaps in Gen.Choose(5, 60).ArrayOf(count)
            select notes.Select((n, i) => (n, gaps.Take(i).Sum() / 100.0)).ToArray();
        return Prop.ForAll(lines.ToArbitrary(), notes =>
        {
            var line = Line(notes);
            var found = LimbPlan.EffortOf(Reach, LineLimbs.Hands, line, LimbPlan.Of(Reach, LineLimbs.Hands, line));
            var least = Enumerable.Range(0, 1 << line.Length)
                .Min(bits => LimbPlan.EffortOf(Reach, LineLimbs.Hands, line, [.. line.Select((_, i) => (bits >> i & 1) == 0 ? Limb.LeftHand : Limb.RightHand)]));
            Assert.Equal(least, found, 9);
        });
    }

    [Law(MaxTest = 100)]
    public FsCheck.Property No_other_limbs_take_less_effort_where_three_share_the_line()
    {
        Limb[] three = [Limb.LeftFoot, Limb.RightFoot, Limb.LeftHand];
        var limbs = LineLimbs.FeetAndLeftHand(ShippedTowers.Default);
        var lines =
            from count in Gen.Choose(1, 6)
            from notes in Gen.Elements(48, 50, 52, 53, 55, 57, 60, 64, 67, 69, 72).ArrayOf(count)
            from gaps in Gen.Choose(5, 60).ArrayOf(count)
            select notes.Select((n, i) => (n, gaps.Take(i).Sum() / 100.0)).ToArray();
        return Prop.ForAll(lines.ToArbitrary(), notes =>
        {
            var line = Line(notes);
            var found = LimbPlan.EffortOf(Reach, limbs, line, LimbPlan.Of(Reach, limbs, line));
            var least = Enumerable.Range(0, (int)Math.Pow(3, line.Length))
                .Min(number => LimbPlan.EffortOf(Reach, limbs, line, [.. line.Select((_, i) => three[number / (int)Math.Pow(3, i) % 3])]));
            Assert.Equal(least, found, 9);
        });
    }

    [Fact]
    public void Where_the_pedals_end_the_left_hand_takes_over_up_to_the_middle_of_the_batons()
    {
        // Pedals C3 to G4, batons C3 to C7.
        var limbs = LineLimbs.FeetAndLeftHand(ShippedTowers.Default);
        Assert.Equal([Limb.RightFoot, Limb.LeftHand, Limb.LeftHand], LimbPlan.Of(Reach, limbs, Line((67, 0), (69, 2), (72, 4))));
        Assert.False(limbs.Take(WrittenNote.AtMidi(73)));
    }

    [Fact]
    public void A_line_on_the_pedals_is_shared_by_both_feet()
    {
        // A third to and fro in 0.3 s: one foot needs 0.15 + 0.06 log2(1 + 2) + 0.05 onto a heavy key = 0.30 s (playing-limits.tsv).
        var feet = LimbPlan.Of(Reach, LineLimbs.Feet(ShippedTowers.Default), Line((55, 0), (59, 0.29), (55, 0.58), (59, 0.87)));
        Assert.Equal([Limb.LeftFoot, Limb.RightFoot, Limb.LeftFoot, Limb.RightFoot], feet);
    }

    [Fact]
    public void With_time_each_foot_stays_in_its_half() => Assert.Equal(
        [Limb.LeftFoot, Limb.LeftFoot, Limb.RightFoot, Limb.RightFoot],
        LimbPlan.Of(Reach, LineLimbs.Feet(ShippedTowers.Default), Line((48, 0), (50, 2), (65, 4), (67, 6))));

    [Fact]
    public void A_note_that_no_limb_can_take_is_named()
    {
        var wrong = Assert.Throws<ArgumentException>(() => LimbPlan.Of(Reach, LineLimbs.Feet(ShippedTowers.Default), Line((48, 0), (96, 1))));
        Assert.Contains("none of left foot, right foot can take C7", wrong.Message, StringComparison.Ordinal);
    }

    private static LineNote[] Line(params (int Midi, double At)[] notes) =>
        [.. notes.Select(n => new LineNote(WrittenNote.AtMidi(n.Midi), new Seconds(n.At)))];
}
