using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Playing;

public sealed class EffortTests
{
    private static readonly Effort Shipped = new(PlayingLimits.Shipped);

    [Law(MaxTest = 1000)]
    public Property Effort_is_never_negative()
    {
        var grips =
            from pedals in Upward(2)
            from left in Upward(2)
            from right in Upward(2)
            select (pedals, left, right);
        return Prop.ForAll(grips.ToArbitrary(), g =>
            Shipped.OfGrip(g.pedals, g.left, g.right) >= 0
            && Shipped.OfRegister([.. g.pedals.Concat(g.left).Concat(g.right).Order()]) >= 0);
    }

    [Law]
    public Property A_wider_grip_of_one_hand_is_no_easier()
    {
        // From C4 up, between two keys of one row: there only the span differs.
        var wider =
            from low in Gen.Choose(60, 84)
            from one in Gen.Choose(1, 12)
            from two in Gen.Choose(1, 12)
            let keys = new[] { low, low + Math.Min(one, two), low + Math.Max(one, two) }.Select(WrittenNote.AtMidi).ToArray()
            where keys[1].IsSharp == keys[2].IsSharp
            select keys;
        return Prop.ForAll(wider.ToArbitrary(), k =>
            Shipped.OfGrip([], [k[0], k[1]], []) <= Shipped.OfGrip([], [k[0], k[2]], [])
            && Shipped.OfGrip([], [], [k[0], k[1]]) <= Shipped.OfGrip([], [], [k[0], k[2]]));
    }

    [Law]
    public Property Hands_or_feet_further_apart_are_no_easier()
    {
        var wider =
            from one in Gen.Choose(0, 24)
            from two in Gen.Choose(0, 24)
            select (Near: Math.Min(one, two), Far: Math.Max(one, two));
        return Prop.ForAll(wider.ToArbitrary(), w =>
            OfHands(w.Near) <= OfHands(w.Far) && OfFeet(w.Near) <= OfFeet(w.Far));

        static double OfHands(int span) => Shipped.OfGrip([Key(48)], [Key(60)], [Key(60 + span)]);
        static double OfFeet(int span) => Shipped.OfGrip([Key(43), Key(43 + span)], [Key(60)], []);
    }

    [Fact]
    public void Effort_begins_beyond_the_soft_limits()
    {
        // playing-limits.tsv, soft: span 4, hands 24 apart, feet 16 apart, four bells at once.
        Assert.Equal(0, Shipped.OfGrip([Key(48), Key(64)], [Key(60)], [Key(84)]));
        Assert.True(Shipped.OfGrip([], [Key(60), Key(65)], []) > 0);
        Assert.True(Shipped.OfGrip([], [Key(60)], [Key(85)]) > 0);
        Assert.True(Shipped.OfGrip([Key(48), Key(65)], [], []) > 0);
        Assert.True(Shipped.OfGrip([Key(48), Key(60)], [Key(62)], [Key(72), Key(76)]) > 0);
    }

    [Fact]
    public void Low_batons_and_mixed_rows_cost()
    {
        Assert.Equal(0, Shipped.OfGrip([], [Key(60)], []));
        Assert.True(Shipped.OfGrip([], [Key(59)], []) > 0);

        // Below the lowest pair four times as much (playing-limits.tsv, hand_lowest_n).
        Assert.Equal(4 * Shipped.OfGrip([], [Key(59)], []), Shipped.OfGrip([], [Key(54)], []));
        Assert.True(Shipped.OfGrip([], [Key(62), Key(66)], []) > Shipped.OfGrip([], [Key(60), Key(64)], []));
    }

    [Fact]
    public void Low_bells_close_together_and_the_deepest_under_the_highest_cost()
    {
        Assert.True(Shipped.OfRegister([Key(59), Key(63)]) > 0);
        Assert.Equal(0, Shipped.OfRegister([Key(59), Key(64)]));
        Assert.Equal(0, Shipped.OfRegister([Key(60), Key(64)]));
        Assert.True(Shipped.OfRegister([Key(52), Key(90)]) > 0);
        Assert.Equal(0, Shipped.OfRegister([Key(53), Key(90)]));
        Assert.Equal(0, Shipped.OfRegister([Key(48)]));
    }

    [Fact]
    public void Hurry_costs_the_more_the_less_time_there_is()
    {
        Assert.Equal(0, Effort.OfHurry(new Seconds(0.5), new Seconds(0.5)));
        Assert.Equal(0, Effort.OfHurry(new Seconds(0.9), new Seconds(0.5)));
        Assert.True(Effort.OfHurry(new Seconds(0.4), new Seconds(0.5)) > 0);
        Assert.True(Effort.OfHurry(new Seconds(0.2), new Seconds(0.5)) > Effort.OfHurry(new Seconds(0.4), new Seconds(0.5)));
    }

    private static WrittenNote Key(int midi) => WrittenNote.AtMidi(midi);

    private static Gen<WrittenNote[]> Upward(int most) =>
        from count in Gen.Choose(0, most)
        from keys in PlayingGens.Key.ArrayOf(count)
        select keys.Distinct().Order().ToArray();
}
