using System.Globalization;
using Revoicer.Clashes;
using Revoicer.Tests.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>
/// Two carillon bells struck together, as measured and rated by listeners: Harrison and MacConnachie 2024, Consonance in
/// the carillon, J. Acoust. Soc. Am. 156(2) 1111-1122 (113 listeners, z-scores), carillon-dyads.tsv. The correlations
/// are what a separate implementation finds; each is held from both sides.
/// </summary>
public sealed class CarillonDyadTests
{
    // Ratio to the prime, amplitude; the head of carillon-dyads.tsv has them. The third is the tierce.
    private static readonly (double Ratio, double Amplitude)[] LowerBell =
    [
        (.49698128, 1.39820785), (1, 1), (1.19392326, 1.28540021), (1.5, .17463053), (1.99245359, .34789160),
        (2.58810888, .26762625), (2.98560596, .34659564), (3.29610225, .23211997), (4.12936977, .23228085),
        (5.38135642, .18545652), (6.72058824, .09099880),
    ];

    private static readonly (double Ratio, double Amplitude)[] UpperBell =
    [
        (.49776015, 1.28075054), (1, 1), (1.19561217, .97520358), (1.49427902, .24305841), (1.99424466, .42627549),
        (2.49891353, .12722176), (2.59534800, .13011325), (2.96743506, .32007506), (3.31038204, .11736065),
        (4.07157299, .21148746), (5.31337298, .09924453), (6.63916490, .01912122),
    ];

    public static TheoryData<int, double, double> Roughnesses()
    {
        var rows = new TheoryData<int, double, double>();
        foreach (var r in PublishedTable.Rows("carillon-dyads.tsv"))
        {
            rows.Add(int.Parse(r[0], CultureInfo.InvariantCulture), PublishedTable.Number(r[1]), PublishedTable.Number(r[2]));
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Roughnesses))]
    public void Roughness_of_a_dyad_is_the_published_one(int semitones, double roughness, double withoutTierce)
    {
        Assert.Equal(roughness, Dyad(semitones, tierce: true), 5.1e-6);
        Assert.Equal(withoutTierce, Dyad(semitones, tierce: false), 5.1e-6);
    }

    [Theory]
    [InlineData(1, -0.921, -0.789)]
    [InlineData(3, -0.70, null)]
    public void Roughness_goes_with_the_ratings(int from, double pearson, double? rank)
    {
        var (intervals, ratings) = Ratings(from);
        var roughness = intervals.Select(n => Dyad(n, tierce: true)).ToList();

        AssertPearson(pearson, roughness, ratings);
        AssertRank(rank, roughness, ratings);
    }

    [Theory]
    [InlineData(66, 1, -0.951, -0.837)]
    [InlineData(78, 1, -0.926, -0.846)]
    [InlineData(66, 3, -0.73, null)]
    [InlineData(78, 3, -0.76, null)]
    public void The_dose_of_two_default_bells_goes_with_the_ratings(int lowerStrike, int from, double pearson, double? rank)
    {
        var physics = new TowerDoses(ClashBells.Wide, Fade.None);
        var lower = ClashBells.Place(lowerStrike);
        var (intervals, ratings) = Ratings(from);
        var doses = intervals
            .Select(n => physics.RoughnessWithin(lower, lower + n, Seconds.Zero, Seconds.Zero, new Seconds(2))).ToList();

        AssertPearson(pearson, doses, ratings);
        AssertRank(rank, doses, ratings);
    }

    private static (List<int> Intervals, List<double> Ratings) Ratings(int from)
    {
        var rated = PublishedTable.Rows("carillon-dyads.tsv")
            .Select(r => (Semitones: int.Parse(r[0], CultureInfo.InvariantCulture), Rating: r[3]))
            .Where(r => r.Rating != "" && r.Semitones >= from)
            .ToList();
        return ([.. rated.Select(r => r.Semitones)], [.. rated.Select(r => PublishedTable.Number(r.Rating))]);
    }

    // Lower prime at MIDI 66; coincident partials add by amplitude, as the paper's own computation has it.
    private static double Dyad(int semitones, bool tierce)
    {
        var prime = 440 * Math.Pow(2, -3 / 12.0);
        var both = Without(LowerBell, tierce).Select(p => (Hertz: prime * p.Ratio, p.Amplitude))
            .Concat(Without(UpperBell, tierce).Select(p => (Hertz: prime * p.Ratio * Math.Pow(2, semitones / 12.0), p.Amplitude)));
        return Roughness.Static(
        [
            .. both.GroupBy(p => Math.Round(p.Hertz, 6), p => p.Amplitude).Select(g => (new Hertz(g.Key), g.Sum())),
        ]);
    }

    private static IEnumerable<(double Ratio, double Amplitude)> Without((double Ratio, double Amplitude)[] bell, bool tierce) =>
        bell.Where((_, i) => tierce || i != 2);

    private static void AssertPearson(double expected, List<double> x, List<double> y) =>
        Assert.InRange(Pearson(x, y), expected - 0.005, expected + 0.005);

    private static void AssertRank(double? expected, List<double> x, List<double> y)
    {
        if (expected is { } rank)
        {
            Assert.InRange(Pearson(Ranks(x), Ranks(y)), rank - 0.005, rank + 0.005);
        }
    }

    private static double Pearson(List<double> x, List<double> y)
    {
        var (meanX, meanY) = (x.Average(), y.Average());
        var both = x.Zip(y, (a, b) => (a - meanX) * (b - meanY)).Sum();
        return both / Math.Sqrt(x.Sum(a => (a - meanX) * (a - meanX)) * y.Sum(b => (b - meanY) * (b - meanY)));
    }

    // Without ties, as in these data.
    private static List<double> Ranks(List<double> values) => [.. values.Select(v => (double)values.Count(o => o < v))];
}
