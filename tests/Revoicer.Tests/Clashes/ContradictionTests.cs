using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Clashes;

/// <summary>The weights of docs/clash-model.md, and what must not enter them.</summary>
public sealed class ContradictionTests
{
    private static readonly ChordClasses CMajor = ClashBells.Chord("0 4* 7");

    [Theory]
    [InlineData(0, 0.0)] // the root
    [InlineData(3, 1.0)] // the tierce of the root, a semitone below the third
    [InlineData(5, 1.0)] // a semitone above the third
    [InlineData(6, 0.5)] // a semitone below the fifth
    [InlineData(11, 0.5)] // a semitone below the root
    [InlineData(9, 0.0)] // a whole tone from anything
    public void A_semitone_from_the_third_counts_whole_and_from_another_tone_half(int pitchClass, double weight) =>
        Assert.Equal(weight, Contradiction.WeightOf(PitchClass.Of(pitchClass), CMajor));

    [Fact]
    public void Without_a_third_every_semitone_counts_half() =>
        Assert.Equal(0.5, Contradiction.WeightOf(PitchClass.Of(4), ClashBells.Chord("0 5 7")));

    [Theory]
    [InlineData(0.0, 3, 1.0)]
    [InlineData(24.9, 3, 1.0)]
    [InlineData(37.5, 3, 0.5)]
    [InlineData(49.999, 3, 0.0)]
    [InlineData(-37.5, 3, 0.5)]
    [InlineData(62.5, 4, 0.5)]
    public void A_partial_counts_whole_within_25_cents_and_not_at_50(double cents, int pitchClass, double certainty)
    {
        var bell = Reference.Default(60);
        var partial = new Hertz(bell.Strike.Value * Math.Pow(2, (300 + cents) / 1200));

        var (found, v) = Contradiction.ClassOf(bell, partial);

        Assert.Equal((pitchClass, certainty), (found.Value, Math.Round(v, 3)));
    }

    [Fact]
    public void Where_there_is_no_chord_nothing_contradicts() =>
        Assert.Equal(0, new TowerDoses(ClashBells.Wide, Fade.None).Contradiction(20, ChordClasses.None, Seconds.Zero, Seconds.Forever));

    [Fact]
    public void The_pitch_of_a_tower_does_not_enter()
    {
        Tower At(string pitch) => Assert.IsType<Revoicer.Text.Reading<Tower>.Accepted>(
            TowerFile.Read("t.toml", ShippedTowers.Text("harbour-47") + pitch)).Value;

        // The frequencies differ by 30 cents, so amplitudes and decays of the default bell differ a little; classes do not.
        var (plain, low) = (At("").Bells, At("cents = -30\n").Bells);
        foreach (var (a, b) in plain.Zip(low))
        {
            Assert.Equal(
                a.Partials.Select(p => Contradiction.ClassOf(a, p.Frequency).Class),
                b.Partials.Select(p => Contradiction.ClassOf(b, p.Frequency).Class));
        }
    }
}
