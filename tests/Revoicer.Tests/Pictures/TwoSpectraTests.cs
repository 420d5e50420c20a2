using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Pictures;
using Revoicer.Tests.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Pictures;

/// <summary>What a picture of spectra shows, against the table of the default bell worked out by hand.</summary>
public sealed class TwoSpectraTests
{
    // Strike C4 at A4 = 440 Hz (ISO 16): an anchor of the table, src/Revoicer/Bells/Data/bell-law.tsv.
    private static readonly double C4 = 440 * Math.Pow(2, -9 / 12.0);

    private static readonly TwoSpectra Third = Of(60, 64);

    [Theory]
    [InlineData(0, "hum", 0.5, -7)]
    [InlineData(1, "prime", 1, -5)]
    [InlineData(2, "tierce", 1.196, 0)]
    [InlineData(3, "quint", 1.5, -21)]
    [InlineData(4, "nominal", 2, -3)]
    [InlineData(5, "deciem", 2.53, -28)]
    [InlineData(6, "undeciem", 2.66, -19)]
    [InlineData(7, "duodeciem", 3.002, -11)]
    [InlineData(8, "double octave", 4.156, -15)]
    public void The_lower_bell_has_the_partials_of_the_table(int place, string name, double ratio, double level)
    {
        var stick = Third.Lower.Sticks[place];

        Assert.Equal("C4", Third.Lower.StrikeNote.ToString());
        Assert.Equal(name, stick.Partial);
        Assert.Equal(C4 * ratio, stick.Frequency.Value, 1e-9);
        Assert.Equal(level, stick.Level.Value - Third.Lower.Sticks[2].Level.Value, 1e-9);
    }

    [Fact]
    public void The_higher_bell_stands_a_major_third_above()
    {
        Assert.Equal("E4", Third.Upper.StrikeNote.ToString());
        Assert.Equal(C4 * Math.Pow(2, 4 / 12.0), Third.Upper.Sticks.Single(s => s.Partial == "prime").Frequency.Value, 1e-9);
        Assert.Equal(9, Third.Upper.Sticks.Count);
    }

    /// <summary>T60 of the hum is 22000 / f s, of the tierce 60 / (60 / T60hum + 3.5 (f / 523.25)^1.27) s: the table's head.</summary>
    [Fact]
    public void Decays_are_those_of_the_table()
    {
        Assert.Equal(22000 / C4, Third.Lower.Sticks[0].Decay.Value, 1e-9);
        Assert.Equal(60 / ((60 * C4 / 22000) + (3.5 * Math.Pow(C4 / 523.25, 1.27))), Third.Lower.Sticks[2].Decay.Value, 1e-9);
    }

    [Fact]
    public void The_loudest_partial_of_both_bells_has_0_dB()
    {
        var levels = Third.Lower.Sticks.Concat(Third.Upper.Sticks).Select(s => s.Level.Value).ToArray();

        Assert.Equal(0, levels.Max(), 1e-9);
        Assert.Equal("tierce", Third.Lower.Sticks.Concat(Third.Upper.Sticks).MaxBy(s => s.Level)!.Partial);
    }

    [Fact]
    public void A_partial_falls_by_60_dB_in_its_T60()
    {
        var stick = new PartialStick("tierce", new Hertz(313), new Decibels(-2), new Seconds(20));

        Assert.Equal(-62, stick.LevelAfter(new Seconds(20)).Value, 1e-9);
        Assert.Equal(-5, stick.LevelAfter(new Seconds(1)).Value, 1e-9);
        Assert.Equal(stick.Level, stick.LevelAfter(Seconds.Zero));
    }

    /// <summary>The level a time after the stroke is that of an amplitude that falls as exp(-kappa t).</summary>
    [Fact]
    public void What_is_left_is_what_the_clash_is_reckoned_with()
    {
        var tierce = Reference.Default(60).Partials.Single(p => p.Name == "tierce");
        var stick = Third.Lower.Sticks[2];

        Assert.Equal(
            20 * Math.Log10(Math.Exp(-tierce.Kappa * 1.5)),
            stick.LevelAfter(new Seconds(1.5)).Value - stick.Level.Value,
            1e-9);
    }

    [Fact]
    public void The_tierce_of_the_lower_bell_is_most_at_odds_with_the_prime_of_the_higher()
    {
        var worst = Assert.IsType<RoughPartials>(Third.Worst);

        Assert.Equal(("tierce", "C4"), (worst.Lower.Name, worst.LowerBell.StrikeNote.ToString()));
        Assert.Equal(("prime", "E4"), (worst.Upper.Name, worst.UpperBell.StrikeNote.ToString()));
        Assert.Equal(C4 * 1.196, worst.Lower.Frequency.Value, 1e-9);
        Assert.InRange(worst.Share, 0.5, 1);
    }

    [Fact]
    public void Bells_without_a_rough_pair_have_no_worst()
    {
        // One partial each, five octaves apart.
        var bells = new[] { 48, 108 }.Select(Reference.Default).Select(b => b with { Partials = [b.Partials[0]] });

        Assert.Null(TwoSpectra.Of(ClashBells.Of(bells), Fade.Default, StrikeNote.AtMidi(48), StrikeNote.AtMidi(108)).Worst);
    }

    [Theory]
    [InlineData(60, 61, "no bell of Merrowhaven Harbour Tower strikes C#4")]
    [InlineData(59, 64, "no bell of Merrowhaven Harbour Tower strikes B3")]
    [InlineData(64, 60, "the bell on E4 does not lie below the one on C4")]
    [InlineData(64, 64, "the bell on E4 does not lie below the one on E4")]
    public void Two_bells_of_the_tower_are_asked_for_the_lower_first(int lower, int upper, string expected) =>
        Assert.StartsWith(expected, Assert.Throws<ArgumentException>(() => Of(lower, upper)).Message);

    private static TwoSpectra Of(int lower, int upper) =>
        TwoSpectra.Of(ShippedTowers.Default, Fade.Default, StrikeNote.AtMidi(lower), StrikeNote.AtMidi(upper));
}
