using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.Music;

/// <summary>What metres are, as every musician counts them (common practice).</summary>
public sealed class MeterTests
{
    // Beats in a bar; a beat and a bar in eighths; the strong places and the place where a long bar is parted, in eighths.
    [Theory]
    [InlineData(2, 4, 2, 2, 4, "0", 2)]
    [InlineData(3, 4, 3, 2, 6, "0", null)]
    [InlineData(4, 4, 4, 2, 8, "0 4", 4)]
    [InlineData(2, 2, 2, 4, 8, "0 4", 4)]
    [InlineData(3, 8, 3, 1, 3, "0", null)]
    [InlineData(6, 8, 2, 3, 6, "0 3", 3)]
    [InlineData(9, 8, 3, 3, 9, "0", null)]
    [InlineData(12, 8, 4, 3, 12, "0 6", 6)]
    public void Bars_are_counted_and_stressed(int upper, int lower, int beats, int beat, int bar, string strong, int? inner)
    {
        var meter = new Meter(upper, lower);
        var strongEighths = Enumerable.Range(0, bar).Where(eighth => meter.IsStrong(Beats.OfQuarters(eighth, 2)));

        Assert.Equal(
            (beats, Beats.OfQuarters(beat, 2), Beats.OfQuarters(bar, 2)),
            (meter.BeatsInBar, meter.Beat, meter.Bar));
        Assert.Equal(strong, string.Join(' ', strongEighths));
        Assert.Equal(inner is { } eighths ? Beats.OfQuarters(eighths, 2) : null, meter.InnerBeat);
        Assert.Equal($"{upper}/{lower}", meter.ToString());
    }

    [Theory]
    [InlineData(3, 4, false)]
    [InlineData(3, 8, false)]
    [InlineData(6, 4, false)]
    [InlineData(6, 8, true)]
    [InlineData(9, 16, true)]
    [InlineData(5, 8, false)]
    public void Beats_divided_in_three_make_a_compound_metre(int upper, int lower, bool compound) =>
        Assert.Equal(compound, new Meter(upper, lower).IsCompound);
}
