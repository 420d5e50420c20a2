using Revoicer.Clashes;
using Revoicer.Tests.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>
/// The model against a separate implementation in another language (clash-check.tsv), through the classes the program
/// prices with. No published values exist for it; tolerance 1e-5 relative, or half a unit of the last printed digit.
/// </summary>
public sealed class ClashCheckTests
{
    private static readonly TowerDoses Physics = new(ClashBells.Wide, Fade.None);
    private static readonly TowerDoses Price = new(ClashBells.Wide, Fade.Default);

    public static TheoryData<string, string, string, string, double, double, double> Rows() => Rows(_ => true);

    public static TheoryData<string, string, string, string, double, double, double> PriceRows() => Rows(m => m == "price");

    private static TheoryData<string, string, string, string, double, double, double> Rows(Func<string, bool> ofMode)
    {
        var rows = new TheoryData<string, string, string, string, double, double, double>();
        foreach (var r in PublishedTable.Rows("clash-check.tsv").Where(r => ofMode(r[0])))
        {
            rows.Add(r[0], r[1], r[2], r[3], PublishedTable.Number(r[4]), PublishedTable.Number(r[5]), PublishedTable.Number(r[7]));
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Doses_and_clash_are_those_of_the_separate_implementation(
        string mode, string strokes, string chord, string window, double roughness, double contradiction, double clash)
    {
        var doses = mode == "price" ? Price : Physics;
        var bounds = window.Split("..");
        var from = new Seconds(PublishedTable.Number(bounds[0]));
        var to = bounds[1] == "inf" ? Seconds.Forever : new Seconds(PublishedTable.Number(bounds[1]));

        var (d, c) = ClashBells.Clash(doses, ClashBells.Strikes(strokes), ClashBells.Chord(chord), from, to);

        var raw = doses.ReferenceDose / 100;
        var reference = mode == "price" ? 100 : doses.ReferenceWithin(new Seconds(2));
        AssertNear(roughness, d * raw, 5e-7);
        AssertNear(contradiction, c * raw / 0.25, 5e-7);
        AssertNear(clash, 100 * (d + c) / reference, 5e-5);
    }

    [Theory]
    [MemberData(nameof(PriceRows))]
    public void The_fast_form_has_the_same_price(
        string mode, string strokes, string chord, string window, double roughness, double contradiction, double clash)
    {
        Assert.Equal(("price", "0..inf"), (mode, window));
        var list = ClashBells.Strikes(strokes).OrderBy(s => s.At).ToList();
        var (d, c) = (0.0, 0.0);
        for (var i = 0; i < list.Count; i++)
        {
            c += Price.Contradiction(list[i].Bell, ClashBells.Chord(chord), Seconds.Zero, Seconds.Forever);
            d += list.Skip(i + 1).Sum(later => Price.Roughness(list[i].Bell, later.Bell, later.At - list[i].At));
        }

        var raw = Price.ReferenceDose / 100;
        AssertNear(roughness, d * raw, 5e-7);
        AssertNear(contradiction, c * raw / 0.25, 5e-7);
        AssertNear(clash, d + c, 5e-5);
    }

    private static void AssertNear(double expected, double actual, double lastDigit) =>
        Assert.InRange(actual, expected - (1e-5 * expected) - lastDigit, expected + (1e-5 * expected) + lastDigit);
}
