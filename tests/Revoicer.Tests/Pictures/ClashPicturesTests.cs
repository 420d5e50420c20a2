using System.Buffers.Binary;
using System.Xml.Linq;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Pictures;
using Xunit;

namespace Revoicer.Tests.Pictures;

/// <summary>The pictures as files, without looking at them: what is written in them and where lines lie.</summary>
public sealed class ClashPicturesTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly TwoSpectra Third =
        TwoSpectra.Of(ShippedTowers.Default, Fade.Default, StrikeNote.AtMidi(60), StrikeNote.AtMidi(64));

    private static readonly IntervalClashes Intervals =
        IntervalClashes.Of(ShippedTowers.Named("great-56"), Fade.Default, StrikeNote.AtMidi(55), StrikeNote.AtMidi(84));

    [Fact]
    public void The_axes_of_the_spectra_have_titles_with_units()
    {
        var words = Words(SvgOf(ClashPictures.Spectra(Third)));

        Assert.Contains("Frequency (Hz), logarithmic", words);
        Assert.Contains("Note at that frequency (A4 = 440 Hz)", words);
        Assert.Contains("Level at the stroke (dB re the loudest partial)", words);
    }

    [Fact]
    public void Every_partial_of_both_bells_is_named_and_has_its_T60()
    {
        var words = Words(SvgOf(ClashPictures.Spectra(Third)));

        // By the law of bell-law.tsv, worked out by hand: T60 of C4's hum is 22000 / 261.6 = 84 s.
        Assert.Contains("hum 84 s", words);
        Assert.All(
            Third.Lower.Sticks.Concat(Third.Upper.Sticks).GroupBy(s => s.Partial),
            twice => Assert.Equal(2, words.Count(w => w.StartsWith(twice.Key + " ", StringComparison.Ordinal) && w.EndsWith(" s", StringComparison.Ordinal))));
    }

    [Fact]
    public void The_pair_at_odds_is_told_in_words()
    {
        var words = Words(SvgOf(ClashPictures.Spectra(Third)));

        // 261.6 x 1.196 = 313 Hz beside 330 Hz.
        Assert.Contains("tierce of C4 against prime of E4,", words);
        Assert.Contains(words, w => w.StartsWith("17 Hz apart: ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_intervals_are_named_and_their_axes_have_titles_with_units()
    {
        var words = Words(SvgOf(ClashPictures.Intervals(Intervals)));

        Assert.All(Intervals.Lines, line => Assert.Contains(line.Name, words));
        Assert.Contains("Strike note of the lower bell, and its frequency (Hz)", words);
        Assert.Contains("Clash of two bells (clash units: C4 E4 G4 = 100)", words);
        Assert.All(["G3", "196", "C6", "1047"], mark => Assert.Contains(mark, words));
    }

    /// <summary>Ten clash units are the distance of two lines of the scale, wherever on the sheet these lie.</summary>
    [Fact]
    public void Marks_stand_where_the_clash_says()
    {
        var svg = SvgOf(ClashPictures.Intervals(Intervals));
        var scale = HeightsOfLevelLines(svg);
        var third = Intervals.Lines[0].Points.Where((_, i) => i % 3 == 0).ToArray();

        // The third's marks are drawn first, and are round; each has a fill and an edge in one place.
        var heights = svg.Descendants(Svg + "ellipse").Select(e => Number(e.Attribute("cy")!.Value)).Distinct().Take(third.Length);

        Assert.Equal(7, scale.Length);
        Assert.All(
            third.Zip(heights),
            pair => Assert.Equal(pair.First.Clash / 10, (scale[0] - pair.Second) / (scale[0] - scale[1]), 1e-3));
    }

    [Fact]
    public void Where_lines_and_marks_lie_does_not_depend_on_the_font()
    {
        // A family that no machine has is replaced by another in silence.
        Assert.Equal(
            Shapes(XElement.Parse(Text(SpectraDrawing.Draw(Third, "Merrowhaven Harbour Script")))),
            Shapes(SvgOf(ClashPictures.Spectra(Third))));
    }

    [Fact]
    public void The_same_data_give_the_same_bytes()
    {
        var intervals = Made(ClashPictures.Intervals(Intervals));
        var spectra = Made(ClashPictures.Spectra(Third));

        Assert.Equal(intervals, Made(ClashPictures.Intervals(Intervals)));
        Assert.Equal(spectra, Made(ClashPictures.Spectra(Third)));
    }

    /// <summary>PNG specification, W3C, 5.2 and 11.2.2: eight bytes of signature, then a header with width and height (from memory).</summary>
    [Fact]
    public void The_PNG_has_three_points_for_every_unit_of_the_SVG()
    {
        var picture = Made(ClashPictures.Intervals(Intervals));
        var png = picture.Png.AsSpan();
        var svg = XElement.Parse(Text(picture));

        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png[..8].ToArray());
        Assert.Equal(3 * Number(svg.Attribute("width")!.Value), BinaryPrimitives.ReadInt32BigEndian(png[16..20]));
        Assert.Equal(3 * Number(svg.Attribute("height")!.Value), BinaryPrimitives.ReadInt32BigEndian(png[20..24]));
    }

    [Fact]
    public void The_SVG_can_be_scaled() =>
        Assert.Equal("0 0 640 460", SvgOf(ClashPictures.Intervals(Intervals)).Attribute("viewBox")!.Value);

    private static Picture Made(Drawing drawing)
    {
        Assert.SkipWhen(drawing is Drawing.NoFont, "no font is installed that the pictures can be lettered with");
        return Assert.IsType<Drawing.Made>(drawing).Picture;
    }

    private static XElement SvgOf(Drawing drawing) => XElement.Parse(Text(Made(drawing)));

    private static string Text(Picture picture) => System.Text.Encoding.UTF8.GetString(picture.Svg.AsSpan());

    private static string[] Words(XElement svg) => [.. svg.Descendants(Svg + "text").Select(t => t.Value)];

    // Of the lines across the sheet, those that are no part of its frame; the lowest, 0, first.
    private static double[] HeightsOfLevelLines(XElement svg) =>
    [
        .. svg.Elements(Svg + "g").Elements(Svg + "path").Attributes("d")
            .Select(d => d.Value.Split('M', 'L', ' '))
            .Where(d => d.Length == 5 && d[2] == d[4])
            .Select(d => Number(d[2]))
            .OrderDescending(),
    ];

    private static string[] Shapes(XElement svg) =>
        [.. svg.Descendants().Where(e => e.Name != Svg + "text" && !e.HasElements).Select(e => e.ToString())];

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
