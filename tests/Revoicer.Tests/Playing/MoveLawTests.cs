using FsCheck.Xunit;
using Revoicer.Playing;
using Xunit;

namespace Revoicer.Tests.Playing;

[Properties(Arbitrary = [typeof(PlayingGens)])]
public sealed class MoveLawTests
{
    [Law(MaxTest = 1000)]
    public void A_detour_is_never_quicker(ThreeKeys keys)
    {
        // log2(1 + d) is subadditive since 1 + d + e <= (1 + d)(1 + e); distance obeys the triangle inequality; who ends in
        // another row changes rows at least once on the way; the heavy key at the end is the same; and a second base comes on top.
        foreach (var law in Laws())
        {
            var direct = law.Time(keys.A, keys.C);
            var detour = law.Time(keys.A, keys.B) + law.Time(keys.B, keys.C);
            Assert.True(direct.Value <= detour.Value, $"{keys}: {direct.Value} s straight, {detour.Value} s by the middle one");
        }
    }

    [Law]
    public void Ease_takes_longer_than_need(ThreeKeys keys)
    {
        var limits = PlayingLimits.Shipped;
        Assert.True(limits.HandMove.Time(keys.A, keys.B) < limits.EasyHandMove.Time(keys.A, keys.B));
        Assert.True(limits.FootMove.Time(keys.A, keys.B) < limits.EasyFootMove.Time(keys.A, keys.B));
    }

    [Theory]
    [InlineData("C4", "C4", 0)]
    [InlineData("C4", "C#4", 0.5)]
    [InlineData("C4", "D4", 1)]
    [InlineData("E4", "F4", 1)]
    [InlineData("A#4", "C#5", 2)]
    [InlineData("C3", "C4", 7)]
    [InlineData("B4", "C3", 13)]
    public void Distance_is_counted_in_natural_keys_a_sharp_half(string a, string b, double keys)
    {
        Assert.Equal(keys, MoveLaw.NaturalKeys(Strokes.Note(a), Strokes.Note(b)));
        Assert.Equal(keys, MoveLaw.NaturalKeys(Strokes.Note(b), Strokes.Note(a)));
    }

    private static MoveLaw[] Laws()
    {
        var limits = PlayingLimits.Shipped;
        return [limits.HandMove, limits.FootMove, limits.EasyHandMove, limits.EasyFootMove];
    }
}
