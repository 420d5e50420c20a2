using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Clashes;

public sealed class TowerDosesTests
{
    private static readonly TowerDoses Price = new(ShippedTowers.Default, Fade.Default);

    [Fact]
    public void The_reference_is_100_left_to_ring_and_grows_with_the_window()
    {
        Assert.Equal(100, Price.ReferenceWithin(Seconds.Forever), 1e-12);
        Assert.InRange(Price.ReferenceWithin(new Seconds(1)), Price.ReferenceWithin(new Seconds(0.5)), Price.ReferenceWithin(new Seconds(2)));
        Assert.InRange(Price.ReferenceWithin(new Seconds(60)), 99.999, 100);
    }

    [Fact]
    public void The_reference_chord_on_the_default_tower_is_the_reference()
    {
        int[] bells = [.. new[] { 60, 64, 67 }.Select(m => ShippedTowers.Default.Bells.ToList().FindIndex(b => b.StrikeNote.Midi == m))];
        var strikes = bells.Select(b => new Strike(b, Seconds.Zero, Decibels.Zero)).ToList();

        var (d, c) = ClashBells.Clash(Price, strikes, ClashBells.Chord("0 4* 7"), Seconds.Zero, Seconds.Forever);

        Assert.Equal(100, d + c, 1e-9);
    }

    [Fact]
    public void A_late_stroke_after_a_quick_decay_does_not_overflow() =>
        Assert.Equal(0, Price.RoughnessWithin(46, 0, new Seconds(600), Seconds.Zero, Seconds.Forever), 1e-12);

    [Fact]
    public void Wrong_arguments_are_named_with_value_and_range()
    {
        var bell = Assert.Throws<ArgumentOutOfRangeException>(() => Price.Roughness(0, 47, Seconds.Zero));
        Assert.Equal(("later", 47), (bell.ParamName, bell.ActualValue));
        Assert.Contains("0..46", bell.Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Price.Roughness(0, 1, new Seconds(-0.1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Price.Roughness(0, 1, new Seconds(double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Price.ReferenceWithin(Seconds.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => Fade.Of(Seconds.Zero));
        Assert.Throws<ArgumentException>(() => Price.Roughness(Seconds.Zero, new double[46 * 47]));
    }
}
