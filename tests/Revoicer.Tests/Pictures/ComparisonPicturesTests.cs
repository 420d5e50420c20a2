using System.Globalization;
using System.Xml.Linq;
using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.Pictures;
using Revoicer.Sounds;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Pictures;

/// <summary>The pictures of comparisons as files, without looking at them: what is written in them and where it and the marks lie.</summary>
public sealed class ComparisonPicturesTests
{
    private const string Buoys = """
        title: Two Buoys
        key: C
        time: 3/4
        tempo: 96
        |: C | Dm7/C | N.C. | G7 Bbdim7 Em | C :|
        """;

    private const string Wide = "X:1\nT:Wide\nM:4/4\nL:1/1\nQ:1/4=60\nK:C\n\"C\"C, | b' |]\n";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly Items<Sound> Sounds = ShippedSounds.Names.Select(ShippedSounds.Named).ToItems();

    private static readonly Comparison Compared = Compare("two-buoys.chords", Buoys, new SettingChoices([ShippedTowers.Default], Sounds, [LayoutWish.Above], [0]));

    private static readonly Comparison InKeys = Compare(
        "two-buoys.chords", Buoys, new SettingChoices([ShippedTowers.Default, ShippedTowers.Named("chapel-23")], [Sounds[1]], [LayoutWish.Above], Comparing.FullRound));

    private static readonly Comparison Fog = Compare(
        "fog.abc", RepositoryFiles.Text("leadsheets-demo", "fog-on-the-outer-pier.abc"), new SettingChoices([ShippedTowers.Default], [Sounds[0]], [LayoutWish.Above], [0]));

    private static readonly TradeOff Traded = TradingOff.Of(
        RevoicingTests.Read("two-buoys.chords", Buoys), ShippedTowers.Default, ShippedSounds.Default, 0, DraftWish.None, TimeProvider.System, null, TestContext.Current.CancellationToken);

    // Three far apart, then ten that nearly touch, as where no voicing carries farther.
    private static readonly TradeOffChart Close = new(
        Enumerable.Range(1, 13).Select(i => new TradeOffMark($"{i}", new Decibels(i < 4 ? i : 4 + (i / 50.0)), i < 4 ? 100 * i : 500 + i)).ToItems(),
        new TradeOffMark("a sound with a long name that leaves the sheet unless it is cut", new Decibels(4), 500),
        HasTune: true);

    public static TheoryData<string> Names => ["clash", "clash in keys", "keys", "trade-off", "trade-off, marks close together", "chord", "chord in keys", "chord under a tune"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Words_are_whole_and_stand_clear_of_each_other(string name)
    {
        var words = PictureWords.In(SvgOf(name)).ToArray();
        Assert.NotEmpty(words);
        Assert.All(words, w => Assert.True(w.Words.IsInside(w.Room), $"'{w.Words.Text}' is cut off"));
        var overlapping =
            from one in words.Index()
            from other in words.Take(one.Index)
            where one.Item.Words.Overlaps(other.Words)
            select $"'{one.Item.Words.Text}' on '{other.Words.Text}'";
        Assert.Empty(overlapping);
    }

    /// <summary>640 units are printed 16 cm wide; a point is 1/72 of an inch, so 9 points are 12.7 units.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Letters_are_nine_points_high_in_print_and_no_colour_is_needed(string name)
    {
        var svg = SvgOf(name);
        Assert.All(PictureWords.In(svg), w => Assert.True(w.Words.Size >= 12.7));
        Assert.Equal("640", svg.Attribute("width")!.Value);
        var colours = svg.Descendants().Attributes().Where(a => a.Name == "fill" || a.Name == "stroke").Select(a => a.Value).ToHashSet();
        Assert.Subset(new HashSet<string> { "white", "black", "none", "#D9D9D9" }, colours);
    }

    [Theory]
    [InlineData("clash", "Clash (C4 E4 G4 together = 100)", "Bar as written, and which time it is heard", "bright", "balanced", "full", "2nd")]
    [InlineData("keys", "Price and clash dose (clash units)", "Key read: keynote, and semitones from the written key", "Bb", "-2", "+6", "recommended", "no draft")]
    [InlineData("trade-off", "Clash dose (clash units), logarithmic", "Carry of the chords on the mean (dB re one stroke of C4 as heard)", "1", "8", "hollow: balanced as it is")]
    [InlineData("chord", "Keys as written, struck ones filled; above them partials by frequency", "Bar 4, beat 1: G7", "500 Hz", "C5")]
    public void Axes_have_titles_with_units_and_what_is_drawn_has_its_name(string name, params string[] expected) =>
        Assert.Subset(PictureWords.In(SvgOf(name)).Select(w => w.Words.Text).ToHashSet(), expected.ToHashSet());

    /// <summary>Twenty clash units are as far apart as two lines of the scale, wherever these lie.</summary>
    [Fact]
    public void Marks_of_the_clash_stand_as_high_as_it_is()
    {
        var svg = SvgOf("clash");
        var scale = HeightsOfLevelLines(svg);
        var top = PictureWords.In(svg).Select(w => w.Words.Text).Where(t => int.TryParse(t, out _)).Max(t => int.Parse(t, CultureInfo.InvariantCulture));
        var clash = ClashOverBars.Of(Compared)!.Lines[0].Chords;

        // The first line's marks are round; that of the legend comes first.
        var heights = svg.Descendants(Svg + "ellipse").Select(e => Number(e.Attribute("cy")!.Value)).Where((_, i) => i % 2 == 0).Skip(1).ToArray();
        var unit = (scale.Max() - scale.Min()) / top;
        Assert.Equal(clash.Count, heights.Length);
        Assert.All(clash.Zip(heights), pair => Assert.Equal(pair.First.Clash, (scale.Max() - pair.Second) / unit, 0.01));
    }

    [Fact]
    public void Marks_of_a_trade_off_stand_where_carry_and_the_logarithm_of_clash_say()
    {
        var svg = SvgOf("trade-off");
        var chart = TradeOffChart.Of(Traded)!;
        var marks = svg.Descendants(Svg + "ellipse").Where((_, i) => i % 2 == 0).Select(e => (X: Number(e.Attribute("cx")!.Value), Y: Number(e.Attribute("cy")!.Value))).ToArray();
        Assert.Equal(chart.Points.Count, marks.Length);
        var (first, last) = (chart.Points[0], chart.Points[^1]);
        Assert.All(chart.Points.Zip(marks), pair =>
        {
            var right = (pair.First.Carry.Value - first.Carry.Value) / (last.Carry.Value - first.Carry.Value);
            var up = Math.Log(pair.First.Clash / first.Clash) / Math.Log(last.Clash / first.Clash);
            Assert.Equal(right, (pair.Second.X - marks[0].X) / (marks[^1].X - marks[0].X), 1e-3);
            Assert.Equal(up, (pair.Second.Y - marks[0].Y) / (marks[^1].Y - marks[0].Y), 1e-3);
        });
    }

    [Fact]
    public void A_key_that_cannot_be_played_has_a_cross_and_no_bars()
    {
        var compared = Compare("wide.abc", Wide, new SettingChoices([ShippedTowers.Default], [ShippedSounds.Default], [LayoutWish.Above], [-1, 0, 1]));
        var bars = KeyChart.Of(compared)!.Panels[0].Keys;
        Assert.Equal([null, "0", null], bars.Select(b => b.Price is null ? null : b.Signed));
        var svg = Drawn(ComparisonPictures.Keys(KeyChart.Of(compared)!));

        // A cross is two strokes of width 2; one cross stands in the legend, and two boxes.
        Assert.Equal(2 * (1 + 2), svg.Descendants(Svg + "path").Count(p => p.Attribute("stroke-width")?.Value == "2"));
        Assert.Equal(2 * (1 + 1), svg.Descendants(Svg + "rect").Count(r => r.Attribute("stroke-width")?.Value == "1.5"));
    }

    [Fact]
    public void The_keys_struck_are_filled_and_no_others()
    {
        var strips = Strips(Compared, "chord");
        var svg = SvgOf("chord");
        var filled = svg.Descendants(Svg + "rect").Count(r => r.Parent!.Name != Svg + "clipPath" && r.Attribute("fill") is null && r.Attribute("stroke") is null);
        Assert.Equal(strips.Strips.Sum(s => s.Keyboard.Count(k => k.IsStruck)), filled);
    }

    [Fact]
    public void The_same_data_give_the_same_bytes() => Assert.All(Names, name => Assert.Equal(SvgOf(name).ToString(), SvgOf(name).ToString()));

    private static ChordStrips Strips(Comparison comparison, string name) =>
        ChordStrips.InBar(comparison, s => s.Setting.Tower == ShippedTowers.Default.Name ? ShippedTowers.Default : ShippedTowers.Named("chapel-23"), 4) is { Count: > 0 } found
            ? found[0].Strips
            : throw new InvalidOperationException($"{name}: no chord in bar 4");

    private static XElement SvgOf(string name) => Drawn(name switch
    {
        "clash" => ComparisonPictures.Clash(ClashOverBars.Of(Compared)!),
        "clash in keys" => ComparisonPictures.Clash(ClashOverBars.Of(InKeys)!),
        "keys" => ComparisonPictures.Keys(KeyChart.Of(InKeys)!),
        "trade-off" => ComparisonPictures.TradeOff(TradeOffChart.Of(Traded)!),
        "trade-off, marks close together" => ComparisonPictures.TradeOff(Close),
        "chord" => ComparisonPictures.Chord(Strips(Compared, name)),
        "chord under a tune" => ComparisonPictures.Chord(ChordStrips.InBar(Fog, _ => ShippedTowers.Default, 2)[0].Strips),
        "chord in keys" => ComparisonPictures.Chord(Strips(InKeys, name)),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no such picture"),
    });

    private static XElement Drawn(Drawing drawing)
    {
        Assert.SkipWhen(drawing is Drawing.NoFont, "no font is installed that the pictures can be lettered with");
        return XElement.Parse(System.Text.Encoding.UTF8.GetString(Assert.IsType<Drawing.Made>(drawing).Picture.Svg.AsSpan()));
    }

    // Lines of width 1 across the sheet.
    private static double[] HeightsOfLevelLines(XElement svg) =>
    [
        .. svg.Descendants(Svg + "path")
            .Where(p => p.Attribute("stroke-width")?.Value is null or "1")
            .Select(p => p.Attribute("d")!.Value.Split('M', 'L', ' '))
            .Where(d => d.Length == 5 && d[2] == d[4])
            .Select(d => Number(d[2])),
    ];

    private static Comparison Compare(string name, string text, SettingChoices choices) =>
        Comparing.Of(RevoicingTests.Read(name, text), choices, DraftWish.None, TimeProvider.System, null, TestContext.Current.CancellationToken);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
