using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Clashes;

public sealed class TowerCarryTests
{
    private static readonly TowerCarry Heard = new(ClashBells.Wide, Listener.Default);
    private static readonly Seconds TwoSeconds = new(2);

    /// <summary>By definition: carry is re one default C4 stroke.</summary>
    [Fact]
    public void One_default_C4_stroke_carries_0_dB() => Assert.Equal(0, Carry(60, Heard), 1e-12);

    /// <summary>docs/clash-model.md, from a separate implementation: at -4 dB an octave G3 carries no more than C4, E5 2.6 dB less.</summary>
    [Fact]
    public void Low_bells_do_not_carry_further_by_themselves()
    {
        Assert.InRange(Carry(55, Heard), -1.5, 0.05);
        Assert.InRange(Carry(76, Heard), -2.65, -2.55);
    }

    /// <summary>
    /// The radiated level multiplies the energy of a bell by 10^(x octaves / 10), whatever its partials do.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    [InlineData(-6)]
    public void The_radiated_level_shifts_carry_by_octaves_from_C4(double perOctave)
    {
        var other = new TowerCarry(ClashBells.Wide, Listener.Default with { RadiatedPerOctave = new Decibels(perOctave) });

        Assert.Equal(Carry(84, Heard) + (2 * (perOctave + 4)), Carry(84, other), 1e-9);
        Assert.Equal(Carry(48, Heard) - (perOctave + 4), Carry(48, other), 1e-9);
    }

    /// <summary>Energies are integrals of squares, so they add over strokes: twice the stroke is 3.01 dB more.</summary>
    [Fact]
    public void Two_equal_strokes_carry_3_dB_further() => Assert.Equal(
        10 * Math.Log10(2),
        Heard.Carry(2 * Heard.CarryEnergy(20, Seconds.Zero, TwoSeconds), TwoSeconds).Value,
        1e-9);

    /// <summary>
    /// Air takes more from a higher partial (absorption rises with frequency), and a mean of logarithms loses when weight
    /// goes from the higher to the lower.
    /// </summary>
    [Law]
    public Property Further_off_no_bell_is_brighter() => Prop.ForAll(
        Gen.Choose(40, 112).Zip(Gen.Choose(1, 2000)).ToArbitrary(),
        at =>
        {
            var far = new TowerCarry(ClashBells.Wide, Listener.Default with { Distance = new Metres(at.Item2 + 50) });
            var near = new TowerCarry(ClashBells.Wide, Listener.Default with { Distance = new Metres(at.Item2) });
            return Brightness(at.Item1, far) < Brightness(at.Item1, near);
        });

    /// <summary>A mean lies between the least and the greatest of what it is taken of.</summary>
    [Fact]
    public void Brightness_lies_between_the_lowest_and_the_highest_partial() => Assert.All(
        Enumerable.Range(40, 73),
        midi => Assert.InRange(
            Brightness(midi, Heard),
            ClashBells.Wide.Bells[ClashBells.Place(midi)].Partials[0].Frequency.Value,
            ClashBells.Wide.Bells[ClashBells.Place(midi)].Partials[^1].Frequency.Value));

    [Fact]
    public void Air_and_distance_are_checked()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Air(new Celsius(51), new Percent(60), new Kilopascals(101)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Air(new Celsius(15), new Percent(double.NaN), new Kilopascals(101)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TowerCarry(ClashBells.Wide, Listener.Default with { Distance = new Metres(0) }));
    }

    private static double Carry(int strikeMidi, TowerCarry carry) => carry
        .Carry(carry.CarryEnergy(ClashBells.Place(strikeMidi), Seconds.Zero, TwoSeconds), TwoSeconds).Value;

    private static double Brightness(int strikeMidi, TowerCarry carry) => TowerCarry.Brightness(
        carry.CarryEnergy(ClashBells.Place(strikeMidi), Seconds.Zero, TwoSeconds),
        carry.LogFrequency(ClashBells.Place(strikeMidi), Seconds.Zero, TwoSeconds)).Value;
}
