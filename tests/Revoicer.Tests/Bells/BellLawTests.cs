using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Bells;

/// <summary>The default bell against its own table, src/Revoicer/Bells/Data/bell-law.tsv, worked out by hand.</summary>
public sealed class BellLawTests
{
    [Fact]
    public void At_an_anchor_the_bell_has_the_tabulated_ratios_and_levels()
    {
        var bell = At(440 * Math.Pow(2, 3 / 12.0));

        Assert.Equal(1.197, Ratio(bell, "tierce"), 1e-9);
        Assert.Equal(4.15, Ratio(bell, "double octave"), 1e-9);
        Assert.Equal(-24, LevelRe(bell, "quint", "tierce"), 1e-9);
    }

    [Fact]
    public void Half_way_between_two_anchors_in_octaves_it_has_their_mean()
    {
        var bell = At(440 * Math.Pow(2, -3 / 12.0));

        Assert.Equal((4.156 + 4.15) / 2, Ratio(bell, "double octave"), 1e-9);
        Assert.Equal((-21 - 24) / 2.0, LevelRe(bell, "quint", "tierce"), 1e-9);
    }

    [Fact]
    public void Outside_the_anchors_ratios_and_levels_are_held()
    {
        Assert.Equal(1.196, Ratio(At(65), "tierce"), 1e-9);
        Assert.Equal(4.01, Ratio(At(5000), "double octave"), 1e-9);
        Assert.Equal(-7, LevelRe(At(65), "hum", "tierce"), 1e-9);
    }

    [Fact]
    public void Decays_follow_the_tabulated_law()
    {
        var bell = At(523.25);

        // T60 of the hum 22000 / f; the tierce falls 3.5 dB/s quicker at C5.
        Assert.Equal(22000 / 523.25, Decay(bell, "hum"), 1e-9);
        Assert.Equal(60 / ((60 * 523.25 / 22000) + 3.5), Decay(bell, "tierce"), 1e-9);
        Assert.Equal(60 / ((60 * 1046.5 / 22000) + (12.6 * Math.Pow(2, 0.83))), Decay(At(1046.5), "duodeciem"), 1e-9);
    }

    [Law]
    public Property The_squares_of_the_amplitudes_add_up_to_the_level() => Prop.ForAll(
        Gen.Choose(20, 8000).Two().ToArbitrary(),
        f => Math.Abs(At(f.Item1, f.Item2 / 400.0 - 10).Partials.Sum(p => p.Amplitude * p.Amplitude)
            / Math.Pow(10, (f.Item2 / 400.0 - 10) / 10) - 1) < 1e-12);

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_strike_frequency_is_positive_and_finite(double hertz) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => At(hertz));

    private static Bell At(double hertz, double level = 0) => BellLaw.Default.BellAt(
        WrittenNote.AtMidi(60), StrikeNote.AtMidi(72), new Hertz(hertz), new Decibels(level));

    private static Partial Partial(Bell bell, string name) => bell.Partials.Single(p => p.Name == name);

    private static double Ratio(Bell bell, string name) => Partial(bell, name).Frequency.Value / bell.Strike.Value;

    private static double LevelRe(Bell bell, string name, string other) =>
        20 * Math.Log10(Partial(bell, name).Amplitude / Partial(bell, other).Amplitude);

    private static double Decay(Bell bell, string name) => Partial(bell, name).Decay.Value;
}
