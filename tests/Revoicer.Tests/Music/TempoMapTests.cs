using FsCheck.Xunit;
using Revoicer.Music;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Music;

[Properties(Arbitrary = [typeof(MusicGens)])]
public sealed class TempoMapTests
{
    [Fact]
    public void Three_speeds_add_up_as_by_hand()
    {
        var map = new TempoMap(
        [
            new TempoChange(Beats.Zero, new Tempo(Beats.OfQuarters(1), 60)),
            new TempoChange(Beats.OfQuarters(4), new Tempo(Beats.OfQuarters(3, 2), 80)),
            new TempoChange(Beats.OfQuarters(10), new Tempo(Beats.OfQuarters(1, 2), 60)),
        ]);

        // A second a quarter; then 120 quarters a minute, half a second each; then 30 a minute, two seconds each.
        Assert.Equal(0, map.At(Beats.Zero).Value, 1e-12);
        Assert.Equal(3.5, map.At(Beats.OfQuarters(7, 2)).Value, 1e-12);
        Assert.Equal(4, map.At(Beats.OfQuarters(4)).Value, 1e-12);
        Assert.Equal(4 + 0.25, map.At(Beats.OfQuarters(9, 2)).Value, 1e-12);
        Assert.Equal(4 + 3, map.At(Beats.OfQuarters(10)).Value, 1e-12);
        Assert.Equal(4 + 3 + 10, map.At(Beats.OfQuarters(15)).Value, 1e-12);
    }

    [Law]
    public void Later_places_are_reached_later(TempoMap map, Beats a, Beats b)
    {
        var (one, two) = (map.At(a), map.At(b));
        Assert.True(a == b ? one == two : (a < b) == (one < two), $"{a} at {one.Value}, {b} at {two.Value}");
    }

    [Law]
    public void The_time_of_a_stretch_is_the_sum_over_its_eighths(TempoMap map)
    {
        // Changes fall on eighths, so each eighth has one speed: the one that began last.
        var sum = 0.0;
        for (var eighth = 0; eighth < 220; eighth++)
        {
            var place = Beats.OfQuarters(eighth, 2);
            Assert.Equal(sum, map.At(place).Value, 1e-9);
            sum += 0.5 * 60 / map.Changes.Last(c => c.From <= place).Tempo.QuartersPerMinute;
        }
    }

    [Fact]
    public void A_map_without_a_speed_is_a_mistake_of_the_program() =>
        Assert.Throws<InvalidOperationException>(() => new TempoMap([]).At(Beats.Zero));

    [Theory]
    [InlineData(3, 2, 84, "84 dotted quarter notes a minute", 126)]
    [InlineData(1, 1, 92.5, "92.5 quarter notes a minute", 92.5)]
    [InlineData(2, 1, 60, "60 half notes a minute", 120)]
    public void A_speed_names_the_note_it_counts(long numerator, long denominator, double perMinute, string text, double quarters)
    {
        var tempo = new Tempo(Beats.OfQuarters(numerator, denominator), perMinute);
        Assert.Equal(text, tempo.ToString());
        Assert.Equal(quarters, tempo.QuartersPerMinute);
        Assert.Equal(new Seconds(60 / perMinute).Value, tempo.Of(tempo.Unit).Value, 1e-12);
    }
}
