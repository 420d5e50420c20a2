using System.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.Music;

/// <summary>Beats are fractions: every law is that of fractions, kept in lowest terms, stated with integers that cannot overflow.</summary>
[Properties(Arbitrary = [typeof(MusicGens)])]
public sealed class BeatsTests
{
    [Law]
    public void Sum_and_difference_are_those_of_fractions(Beats a, Beats b)
    {
        Same((N(a) * D(b)) + (N(b) * D(a)), D(a) * D(b), a + b);
        Same((N(a) * D(b)) - (N(b) * D(a)), D(a) * D(b), a - b);
    }

    [Law]
    public void Times_and_parts_are_those_of_fractions(Beats a, PositiveInt number)
    {
        Same(N(a) * number.Get, D(a), a * number.Get);
        Same(-N(a) * number.Get, D(a), a * -number.Get);
        Same(N(a), D(a) * number.Get, a / number.Get);
    }

    [Law]
    public void Order_is_that_of_fractions(Beats a, Beats b)
    {
        var order = (N(a) * D(b)).CompareTo(N(b) * D(a));
        Assert.Equal(Math.Sign(order), Math.Sign(a.CompareTo(b)));
        Assert.Equal((order < 0, order <= 0, order == 0), ((a < b), (a <= b), (a == b)));
        Assert.Equal((order > 0, order >= 0), ((a > b), (a >= b)));
    }

    [Law]
    public void A_stretch_goes_into_another_as_often_as_whole_division_says(Beats a, Beats b)
    {
        var (size, part) = (a < Beats.Zero ? Beats.Zero - a : a, b < Beats.Zero ? Beats.Zero - b : b);
        if (part == Beats.Zero)
        {
            Assert.Throws<DivideByZeroException>(() => Beats.WholeTimes(size, part));
        }
        else
        {
            Assert.Equal(N(size) * D(part) / (N(part) * D(size)), Beats.WholeTimes(size, part));
        }
    }

    [Law]
    public void Equal_fractions_are_equal_values(Beats a, PositiveInt factor)
    {
        var same = Beats.OfQuarters(a.Numerator * factor.Get, a.Denominator * factor.Get);
        Assert.Equal(a, same);
        Assert.Equal(a.GetHashCode(), same.GetHashCode());
    }

    [Fact]
    public void The_default_is_no_time() => Assert.Equal((0L, 1L, Beats.Zero), (default(Beats).Numerator, default(Beats).Denominator, default));

    [Theory]
    [InlineData(0)]
    [InlineData(-4)]
    public void A_denominator_that_is_not_positive_is_told_with_its_value(long denominator)
    {
        var thrown = Assert.Throws<ArgumentOutOfRangeException>(() => Beats.OfQuarters(1, denominator));
        Assert.Equal(("denominator", denominator), (thrown.ParamName, thrown.ActualValue));
    }

    [Fact]
    public void What_a_long_cannot_hold_is_told_and_not_wrapped() =>
        Assert.Throws<OverflowException>(() => Beats.OfQuarters(long.MaxValue) + Beats.OfQuarters(1));

    [Theory]
    [InlineData(3, 1, "3")]
    [InlineData(6, 4, "3/2")]
    [InlineData(-1, 2, "-1/2")]
    public void Fractions_read_in_lowest_terms(long numerator, long denominator, string text) =>
        Assert.Equal(text, Beats.OfQuarters(numerator, denominator).ToString());

    private static void Same(BigInteger numerator, BigInteger denominator, Beats beats)
    {
        Assert.Equal(numerator * beats.Denominator, denominator * beats.Numerator);
        Assert.Equal(BigInteger.One, BigInteger.GreatestCommonDivisor(beats.Numerator, beats.Denominator));
    }

    private static BigInteger N(Beats beats) => beats.Numerator;

    private static BigInteger D(Beats beats) => beats.Denominator;
}
