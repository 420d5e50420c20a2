using Revoicer.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>
/// Every value of hk-g-and-chords.tsv at the precision it was printed with. Sources: Bigand, Parncutt and Lerdahl 1996,
/// Perception and Psychophysics 58; open regression tests of the R package dycon (MIT); Johnson-Laird, Kang and Leong
/// 2012, Music Perception 30.
/// </summary>
public sealed class PublishedRoughnessTests
{
    public static TheoryData<string, string, string, string> Rows()
    {
        var rows = new TheoryData<string, string, string, string>();
        foreach (var r in PublishedTable.Rows("hk-g-and-chords.tsv"))
        {
            rows.Add(r[0], r[1], r[2], r[3]);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_published_value_comes_out(string kind, string input, string setup, string printed)
    {
        var value = kind switch
        {
            "chord" => Roughness.Static(Chord(Numbers(input, '-'), setup)),
            "puretones" => Roughness.Static([.. Numbers(input, '-').Select(m => (AtMidi(m), 1.0))]),
            "g(y)" => Roughness.Curve(Numbers(input, ',')[0]),
            "g(y), no cut-off" => Roughness.CurveWithoutCutOff(Numbers(input, ',')[0]),
            "bandwidth Hz" => Roughness.Bandwidth(new Hertz(Numbers(input, ',')[0]), new Hertz(Numbers(input, ',')[1])).Value,
            _ => throw new ArgumentException($"unknown kind of row '{kind}'", nameof(kind)),
        };

        var decimals = printed.Split('.')[1].Length;
        Assert.Equal(PublishedTable.Number(printed), value, (0.5 * Math.Pow(10, -decimals)) + 1e-12);
    }

    [Fact]
    public void The_whole_table_is_there() => Assert.Equal(73, PublishedTable.Rows("hk-g-and-chords.tsv").Count());

    // Setup A: 10 harmonics of amplitude 1/n, each at the nearest equal-tempered semitone; B: 11, where they are.
    // Coincident partials of different tones add by power.
    private static List<(Hertz, double)> Chord(IEnumerable<double> notes, string setup) =>
    [
        .. notes
            .SelectMany(note => Enumerable.Range(1, setup == "A" ? 10 : 11).Select(n => (Place: Place(note, n, setup), Power: 1.0 / (n * n))))
            .GroupBy(p => p.Place, p => p.Power)
            .Select(g => (AtMidi(g.Key), Math.Sqrt(g.Sum()))),
    ];

    private static double Place(double note, int harmonic, string setup) =>
        Math.Round(note + (12 * Math.Log2(harmonic)), setup == "A" ? 0 : 6);

    private static Hertz AtMidi(double midi) => new(440 * Math.Pow(2, (midi - 69) / 12));

    private static List<double> Numbers(string text, char separator) => [.. text.Split(separator).Select(PublishedTable.Number)];
}
