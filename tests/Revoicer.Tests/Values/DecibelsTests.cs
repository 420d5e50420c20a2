using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Values;

public class DecibelsTests
{
    [Theory]
    [InlineData(-3.46, "-3.5 dB")]
    [InlineData(-0.04, "0.0 dB")]
    [InlineData(0.04, "0.0 dB")]
    public void They_are_read_to_a_tenth_without_a_negative_nothing(double value, string expected) => Assert.Equal(expected, new Decibels(value).ToString());
}
