using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Clashes;

/// <summary>
/// What every carillonneur knows (common practice, no source) and the price must say of default bells. The numbers
/// beside the facts are a separate implementation's, held to half a unit of their last digit, at the strike notes named.
/// </summary>
public sealed class FactsOfTheTrade
{
    private const int G3 = 55;
    private const int C4 = 60;
    private const int G4 = 67;

    private static readonly TowerDoses Price = new(ClashBells.Wide, Fade.Default);

    // Common practice. Bass: strike G3 to G4.
    [Fact]
    public void A_close_major_triad_clashes_four_times_as_much_in_the_bass_as_three_octaves_higher() => Assert.All(
        Enumerable.Range(G3, G4 - G3 + 1),
        root => Assert.True(Major(root, 0, 4, 7) >= 4 * Major(root + 36, 0, 4, 7), $"root {root}"));

    // Common practice.
    [Theory]
    [InlineData(G3, 0.86)]
    [InlineData(C4, 0.84)]
    [InlineData(G4, 0.90)]
    public void Root_an_octave_higher_a_sixth_above_the_third_clashes_less(int root, double ratio) =>
        AssertRatio(ratio, Major(root, 4, 7, 12) / Major(root, 0, 4, 7));

    // Not what common practice says of inversions: on one bass bell they change little. The numbers are a second
    // implementation's, as for the third moved down.
    [Theory]
    [InlineData(G3, 1.05, 0.94, 1.013)]
    [InlineData(C4, 1.043, 0.929, 1.086)]
    [InlineData(G4, 1.077, 0.987, 1.215)]
    public void On_one_bass_bell_an_inversion_changes_little_and_a_third_moved_down_makes_it_worse(
        int bass, double first, double second, double thirdDown)
    {
        AssertRatio(first, Major(bass - 4, 4, 7, 12) / Major(bass, 0, 4, 7));
        AssertRatio(second, Major(bass - 7, 7, 12, 16) / Major(bass, 0, 4, 7));
        AssertRatio(thirdDown, Major(bass, -8, 0, 7) / Major(bass, 0, 4, 7));
    }

    // Common practice.
    [Theory]
    [InlineData(G3, 0.74)]
    [InlineData(C4, 0.78)]
    [InlineData(G4, 0.85)]
    public void Root_fifth_and_tenth_clash_less_than_the_close_triad(int root, double ratio) =>
        AssertRatio(ratio, Major(root, 0, 7, 16) / Major(root, 0, 4, 7));

    // Common practice.
    [Theory]
    [InlineData(G3, 0.28)]
    [InlineData(C4, 0.30)]
    [InlineData(G4, 0.37)]
    public void A_seventeenth_clashes_less_than_half_as_much_as_a_third(int root, double ratio) =>
        AssertRatio(ratio, Major(root, 0, 28) / Major(root, 0, 4));

    // Common practice. Every register, each stroke left to ring.
    [Fact]
    public void Struck_one_after_another_a_triad_clashes_less_the_further_apart() => Assert.All(
        Enumerable.Range(G3, 45),
        root =>
        {
            var steps = new[] { 0.0, 0.06, 0.3, 0.6 }.Select(step => Rolled(root, step)).ToList();
            Assert.Equal(steps.OrderDescending(), steps);
        });

    [Fact]
    public void At_C4_a_roll_of_60_ms_leaves_91_percent_and_of_300_ms_67()
    {
        AssertRatio(0.91, Rolled(C4, 0.06) / Rolled(C4, 0));
        AssertRatio(0.67, Rolled(C4, 0.3) / Rolled(C4, 0));
    }

    // Common practice.
    [Theory]
    [InlineData(G3, 0.96, 0.97)]
    [InlineData(C4, 0.93, 0.93)]
    [InlineData(G4, 0.94, 0.83)]
    public void A_minor_triad_clashes_less_than_the_major_triad_on_its_root(int root, double close, double open)
    {
        AssertRatio(close, Minor(root, 0, 3, 7) / Major(root, 0, 4, 7));
        AssertRatio(open, Minor(root, 0, 7, 15) / Major(root, 0, 7, 16));
    }

    // Common practice.
    [Theory]
    [InlineData(G3, 0.56, 0.85)]
    [InlineData(C4, 0.60, 0.87)]
    [InlineData(G4, 0.67, 0.62)]
    public void A_fifth_or_sixth_above_the_bass_clashes_less_an_octave_higher(int bass, double fifth, double sixth)
    {
        AssertRatio(fifth, Major(bass, 0, 19) / Major(bass, 0, 7));

        // The sixth is a major one: the bass is the fifth of a major chord, the sixth its third.
        AssertRatio(sixth, Major(bass - 7, 7, 28) / Major(bass - 7, 7, 16));
    }

    // Common practice; published for dyads too (see CarillonDyadTests).
    [Theory]
    [InlineData(G3)]
    [InlineData(C4)]
    [InlineData(G4)]
    public void Fourth_tritone_fifth_sixth_and_octave_clash_less_than_the_major_third(int lower)
    {
        double[] milder = [.. new[] { 5, 6, 7, 9, 12 }.Select(n => Two(lower, n))];

        Assert.All(milder, clash => Assert.True(clash < Two(lower, 4), $"{clash} at {lower}"));
        Assert.True(Two(lower, 9) < Two(lower, 8));
    }

    private static void AssertRatio(double expected, double actual) =>
        Assert.InRange(actual, expected - 0.0051, expected + 0.0051);

    private static double Major(int root, params int[] above) => Chord(root, 4, above.Select(n => (n, 0.0)));

    private static double Minor(int root, params int[] above) => Chord(root, 3, above.Select(n => (n, 0.0)));

    private static double Rolled(int root, double step) => Chord(root, 4, [(0, 0), (4, step), (7, 2 * step)]);

    private static double Two(int lower, int semitones) =>
        Price.Roughness(ClashBells.Place(lower), ClashBells.Place(lower + semitones), Seconds.Zero);

    private static double Chord(int root, int third, IEnumerable<(int Above, double At)> tones)
    {
        var strikes = tones
            .Select(t => new Strike(ClashBells.Place(root + t.Above), new Seconds(t.At), Decibels.Zero)).ToList();
        var chord = ClashBells.Chord($"{root % 12} {(root + third) % 12}* {(root + 7) % 12}");
        var (d, c) = ClashBells.Clash(Price, strikes, chord, Seconds.Zero, Seconds.Forever);
        return d + c;
    }
}
