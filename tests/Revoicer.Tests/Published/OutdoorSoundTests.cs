using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Published;

public sealed class OutdoorSoundTests
{
    /// <summary>IEC 61672-1, table of A-weightings, to its printed tenth of a decibel; from memory. Exact frequencies are 10^(n/10).</summary>
    [Theory]
    [InlineData(15, -39.4)]
    [InlineData(18, -26.2)]
    [InlineData(21, -16.1)]
    [InlineData(24, -8.6)]
    [InlineData(27, -3.2)]
    [InlineData(30, 0.0)]
    [InlineData(33, 1.2)]
    [InlineData(36, 1.0)]
    [InlineData(39, -1.1)]
    [InlineData(42, -6.6)]
    public void A_weighting_is_that_of_the_table(int tenthsOfDecades, double decibels) =>
        Assert.Equal(decibels, AWeighting.Of(new Hertz(Math.Pow(10, tenthsOfDecades / 10.0))).Value, 0.0501);

    /// <summary>Absorption in dB/km as ISO 9613-2, table 2 prints it from ISO 9613-1 (exact octave frequencies); from memory. Printed from three digits, so 4.15 stands there as 4.1.</summary>
    [Theory]
    [InlineData(10, 70, new[] { 0.1, 0.4, 1.0, 1.9, 3.7, 9.7, 32.8, 117 })]
    [InlineData(20, 70, new[] { 0.1, 0.3, 1.1, 2.8, 5.0, 9.0, 22.9, 76.6 })]
    [InlineData(15, 20, new[] { 0.3, 0.6, 1.2, 2.7, 8.2, 28.2, 88.8, 202 })]
    [InlineData(15, 50, new[] { 0.1, 0.5, 1.2, 2.2, 4.2, 10.8, 36.2, 129 })]
    [InlineData(15, 80, new[] { 0.1, 0.3, 1.1, 2.4, 4.1, 8.3, 23.7, 82.8 })]
    public void Absorption_is_that_of_the_table(double celsius, double percent, double[] decibelsPerKilometre)
    {
        var air = new Air(new Celsius(celsius), new Percent(percent), new Kilopascals(101.325));
        for (var octave = 0; octave < decibelsPerKilometre.Length; octave++)
        {
            var frequency = new Hertz(1000 * Math.Pow(10, 0.3 * (octave - 4)));
            var printed = decibelsPerKilometre[octave];
            Assert.Equal(printed, air.Loss(frequency, new Metres(1000)).Value, printed >= 100 ? 0.501 : 0.055);
        }
    }

    /// <summary>ISO 16: the tuning note A4, MIDI 69, has 440 Hz; twelve equal steps an octave.</summary>
    [Theory]
    [InlineData(69, 440.0)]
    [InlineData(57, 220.0)]
    [InlineData(60, 261.6256)]
    [InlineData(127, 12543.854)]
    public void Concert_pitch_is_ISO_16(int midi, double hertz) =>
        Assert.Equal(hertz, Tuning.Concert.Of(StrikeNote.AtMidi(midi)).Value, 0.0005);
}
