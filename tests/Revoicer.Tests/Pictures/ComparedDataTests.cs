using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.Pictures;
using Revoicer.Sounds;
using Revoicer.Tests.Comparisons;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Pictures;

/// <summary>What the pictures of comparisons are drawn from.</summary>
public sealed class ComparedDataTests
{
    private const string Buoys = "title: Buoys\nkey: C\ntime: 4/4\ntempo: 84\n|: C | G7 F | N.C. | C :|\n";

    private static readonly Comparison Compared = Compare([0]);

    private static readonly Comparison InKeys = Compare(Comparing.FullRound);

    [Fact]
    public void Chords_stand_at_their_place_among_the_bars_as_heard()
    {
        var line = ClashOverBars.Of(Compared)!.Lines[0];
        Assert.Equal([(0.0, 1.0), (1, 1.5), (1.5, 2), (3, 4), (4, 5), (5, 5.5), (5.5, 6), (7, 8)], line.Chords.Select(c => (c.From, c.To)));
        Assert.Equal(Compared.Settings[0].Made!.Arrangement.Choices.Select(c => c.Clash.Avoidable), line.Chords.Select(c => c.Clash));
        Assert.Equal(["bright", "balanced", "full"], ClashOverBars.Of(Compared)!.Lines.Select(l => l.Name));
    }

    [Fact]
    public void Of_several_keys_those_recommended_are_drawn_and_then_the_written_one()
    {
        var clash = ClashOverBars.Of(InKeys)!;
        var recommended = InKeys.Advice.Select(a => $"{a.Chosen.Setting.Sound}, in {a.Chosen.Setting.KeyName}").ToHashSet();
        Assert.Equal(3, recommended.Count);
        Assert.Subset(clash.Lines.Select(l => l.Name).ToHashSet(), recommended);
        Assert.All(clash.Lines.Where(l => !recommended.Contains(l.Name)), l => Assert.EndsWith("in C major (0)", l.Name));
        Assert.Equal(36, clash.Lines.Count + clash.LeftOut);
        Assert.InRange(clash.Lines.Count, 3, ClashOverBars.MostLines);
    }

    [Fact]
    public void A_chart_of_keys_has_a_panel_a_sound_and_marks_the_key_recommended()
    {
        Assert.Null(KeyChart.Of(Compared));
        var chart = KeyChart.Of(InKeys)!;
        Assert.Equal(["bright", "balanced", "full"], chart.Panels.Select(p => p.Name));
        Assert.All(chart.Panels.Zip(InKeys.Advice), p => Assert.Equal(p.Second.Chosen.Setting.Signed, Assert.Single(p.First.Keys, k => k.IsRecommended).Signed));
        Assert.Equal(InKeys.Settings.Select(s => s.Figures!.Price / 1000.0), chart.Panels.SelectMany(p => p.Keys).Select(k => k.Price!.Value));
        Assert.All(chart.Panels[0].Keys.Zip(InKeys.Settings), k => Assert.Equal(k.Second.Fit.WithPedal == k.Second.Fit.Basses, k.First.HasAllBasses));
    }

    /// <summary>
    /// A tuned bell's hum lies about an octave below its strike note, its nominal an octave above it (common practice), its
    /// tierce a minor third above it; so over the keyboard, a key for each bell, by semitones.
    /// </summary>
    [Fact]
    public void Partials_lie_over_the_keys_that_sound_at_their_pitch()
    {
        var strip = Strip(Compared, ShippedTowers.Default);
        Assert.All(strip.Bells, bell => Assert.All(new[] { -12, 0, 3, 12 }, interval =>
            Assert.Contains(bell.Partials, p => Math.Abs(p - bell.Note.Midi - interval) < 0.6)));

        // A4 = 440 Hz strikes on the key an octave lower, MIDI 57.
        Assert.Equal(57 + (12 * Math.Log2(500.0 / 440)), strip.Frequencies.Single(f => f.Frequency == new Hertz(500)).Place, 6);
    }

    [Fact]
    public void A_strip_has_every_bell_struck_and_every_bell_that_quarrels_and_joins_partials_that_these_have()
    {
        var strip = Strip(Compared, ShippedTowers.Default);
        var choice = Compared.Settings[0].Made!.Arrangement.Choices[1];
        Assert.Equal(choice.Strokes.Select(s => s.Note).ToHashSet(), strip.Keyboard.Where(k => k.IsStruck).Select(k => k.Note).ToHashSet());
        Assert.Equal(47, strip.Keyboard.Count(k => k.HasBell));
        Assert.Equal(choice.Quarrels.Select(q => q.Share), strip.Links.Select(l => l.Share));
        Assert.All(
            strip.Links.SelectMany(l => l.To is { } to ? [l.From, to] : new[] { l.From }),
            end => Assert.Contains(strip.Bells.Single(b => b.Note == end.Bell).Partials, p => Math.Abs(p - end.Place) < 1e-9));
    }

    [Fact]
    public void Without_a_draft_there_is_nothing_to_draw()
    {
        var none = new Comparison("Ebb", [SomeFigures.Unplayable(0), SomeFigures.Unplayable(1)], []);
        Assert.Null(ClashOverBars.Of(none));
        Assert.Null(KeyChart.Of(none));
        Assert.Empty(ChordStrips.InBar(none, _ => ShippedTowers.Default, 1));
        Assert.Null(TradeOffChart.Of(new TradeOff("Ebb", none.Settings[0], Decibels.Zero, [new TradeOffPoint(ShippedSounds.Default, none.Settings[0])])));
    }

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(0.7, 0.2, 4)]
    [InlineData(1, 0.2, 5)]
    [InlineData(60, 10, 6)]
    [InlineData(61, 20, 4)]
    [InlineData(1427, 500, 3)]
    public void Scales_go_in_round_steps_up_to_the_largest_value(double most, double step, int steps)
    {
        var scale = Scale.For(most, 6);
        Assert.Equal((step, steps), (Math.Round(scale.Step, 9), scale.Steps));
        Assert.True(scale.Top >= most - 1e-9);
    }

    private static ChordStrip Strip(Comparison comparison, Tower tower) => ChordStrips.InBar(comparison, _ => tower, 2)[0].Strips.Strips[0];

    private static Comparison Compare(Items<int> keys) => Comparing.Of(
        RevoicingTests.Read("buoys.chords", Buoys),
        new SettingChoices([ShippedTowers.Default], ShippedSounds.Names.Select(ShippedSounds.Named).ToItems(), [LayoutWish.Above], keys),
        DraftWish.None,
        TimeProvider.System,
        null,
        TestContext.Current.CancellationToken);
}
