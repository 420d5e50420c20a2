using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Pictures;
using Revoicer.Tests.Clashes;
using Revoicer.Tests.Published;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Pictures;

/// <summary>What a picture of intervals shows, against the clash model asked about other bells of the same kind.</summary>
public sealed class IntervalClashesTests
{
    private const int G3 = 55;
    private const int G4 = 67;
    private const int C5 = 72;
    private const int C6 = 84;

    private static readonly IntervalClashes Great = Of("great-56", G3, C6);
    private static readonly TowerDoses Price = new(ClashBells.Wide, Fade.Default);

    [Fact]
    public void The_third_comes_first_and_its_open_forms_follow() => Assert.Equal(
        [("major third", 4), ("major sixth", 9), ("tenth", 16), ("twelfth", 19), ("seventeenth", 28)],
        Great.Lines.Select(l => (l.Name, l.Interval.Semitones)));

    /// <summary>
    /// The wide tower has more bells, and the price of two bells is theirs alone; so every point must be equal, but for
    /// the last digits that the order of a sum may turn.
    /// </summary>
    [Fact]
    public void Every_point_is_the_roughness_of_its_two_bells_struck_together() => Assert.All(
        Great.Lines,
        line => Assert.All(line.Points, point => Assert.Equal(
            Price.Roughness(
                ClashBells.Place(point.Lower.Midi), ClashBells.Place(point.Lower.Midi + line.Interval.Semitones), Seconds.Zero),
            point.Clash,
            1e-9)));

    [Fact]
    public void Each_line_has_a_point_for_every_lower_bell_whose_partner_hangs_in_the_tower()
    {
        // The great tower goes up to strike D8 (110), so a seventeenth stands on A#5 at most.
        Assert.All(Great.Lines.SkipLast(1), line => Assert.Equal(Enumerable.Range(G3, 30), line.Points.Select(p => p.Lower.Midi)));
        Assert.Equal(Enumerable.Range(G3, 28), Great.Lines[^1].Points.Select(p => p.Lower.Midi));
    }

    [Fact]
    public void A_bell_that_is_missing_is_passed_over()
    {
        // The harbour tower has no strike C#4 and D#4, and nothing below C4.
        var third = Of("harbour-47", G3, C5).Lines[0];

        Assert.Equal([60, 62, 64, 65], third.Points.Take(4).Select(p => p.Lower.Midi));
    }

    [Fact]
    public void The_frequency_is_that_of_the_lower_bell() => Assert.Equal(
        440 * Math.Pow(2, (G3 - 69) / 12.0), Great.Lines[0].Points[0].Frequency.Value, 1e-9);

    /// <summary>
    /// Published/clash-check.tsv, a separate implementation: the roughness of thirds, tenths and seventeenths on G3, C4, C5
    /// and C6 by the whole dose of C4 E4 G4. The last seventeenth is none of the tower's.
    /// </summary>
    [Fact]
    public void Points_are_those_of_the_separate_implementation()
    {
        var rows = PublishedTable.Rows("clash-check.tsv").Where(r => r[0] == "price").ToArray();
        var reference = rows.Single(r => r[1] == "60@0 64@0 67@0" && r[2] == "0 4* 7");
        var unit = (PublishedTable.Number(reference[4]) + (0.25 * PublishedTable.Number(reference[5]))) / 100;
        var roughness = rows.DistinctBy(r => r[1]).ToDictionary(r => r[1], r => PublishedTable.Number(r[4]) / unit);
        var compared = Great.Lines.SelectMany(line => line.Points, (line, point) => (point.Clash, Strokes: $"{point.Lower.Midi}@0 {point.Lower.Midi + line.Interval.Semitones}@0"))
            .Where(p => roughness.ContainsKey(p.Strokes))
            .ToArray();

        Assert.Equal(11, compared.Length);
        Assert.All(compared, p => Assert.Equal(roughness[p.Strokes], p.Clash, 1e-5 * roughness[p.Strokes] + (5e-7 / unit)));
    }

    /// <summary>
    /// A tendency that docs/clash-model.md tells: in the bass the tenth is the gentler, from C5 upward it is as rough as
    /// the third or rougher. Sixth, twelfth and seventeenth stay below a half of the third (common practice: the way out).
    /// </summary>
    [Fact]
    public void Tenth_and_third_change_places_in_the_middle_of_the_compass()
    {
        var (third, tenth) = (Great.Lines[0].Points, Great.Lines[2].Points);
        var ratios = third.Zip(tenth, (a, b) => (a.Lower.Midi, Ratio: b.Clash / a.Clash)).ToArray();

        Assert.All(ratios.Where(r => r.Midi <= G4), r => Assert.InRange(r.Ratio, 0.8, 0.91));
        Assert.All(ratios.Where(r => r.Midi >= C5), r => Assert.InRange(r.Ratio, 1.0, 1.4));
        Assert.All(
            Great.Lines.Where(l => l.Name is "major sixth" or "twelfth" or "seventeenth"),
            line => Assert.All(line.Points.Zip(third), p => Assert.True(p.First.Clash < p.Second.Clash / 2, line.Name)));
    }

    [Fact]
    public void A_stretch_without_any_interval_is_refused() => Assert.StartsWith(
        "Merrowhaven Great Tower has none of the intervals between C9 and D9",
        Assert.Throws<ArgumentException>(() => Of("great-56", 120, 122)).Message);

    private static IntervalClashes Of(string tower, int from, int to) =>
        IntervalClashes.Of(ShippedTowers.Named(tower), Fade.Default, StrikeNote.AtMidi(from), StrikeNote.AtMidi(to));
}
