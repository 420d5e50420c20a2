using System.Text.Json;
using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.LeadSheets;
using Revoicer.Sounds;
using Revoicer.Tests.Writing;
using Revoicer.Values;
using Revoicer.Writing.Json;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests.Comparisons;

public sealed class TradeOffTests
{
    private const string ThreeBuoys = """
        title: Three Buoys
        key: C
        time: 3/4
        tempo: 96
        | C | Dm7/C | G7 | C ||
        """;

    private static readonly TradeOff Traded = Trade(ThreeBuoys, ShippedSounds.Default);

    /// <summary>Of a set of pairs those are kept to which no other is as good in both and better in one; found here by sorting.</summary>
    [Law(MaxTest = 200)]
    public void The_sample_has_no_draft_that_another_outdoes_and_leaves_out_no_other(int seed)
    {
        var random = new Random(seed);
        (int Clash, int Carry)[] drawn = [.. Enumerable.Range(0, 1 + random.Next(12)).Select(_ => (random.Next(8), random.Next(8)))];
        var points = Sample(drawn).Points.Select(p => ((int)p.Compared.Figures!.ClashDose, (int)p.Compared.Figures.Carry.Value)).ToArray();

        var expected = new List<(int Clash, int Carry)>();
        foreach (var (clash, carry) in drawn.Distinct().OrderBy(d => d.Clash).ThenByDescending(d => d.Carry))
        {
            if (expected.Count == 0 || carry > expected[^1].Carry)
            {
                expected.Add((clash, carry));
            }
        }

        Assert.Equal(expected, points);
    }

    [Fact]
    public void Carry_and_clash_rise_from_each_draft_to_the_next()
    {
        (double Clash, double Carry)[] points = [.. Traded.Points.Select(p => (p.Compared.Figures!.ClashDose, p.Compared.Figures.Carry.Value))];
        Assert.All(points.Zip(points.Skip(1)), pair => Assert.True(pair.First.Clash < pair.Second.Clash && pair.First.Carry < pair.Second.Carry));
        Assert.InRange(points.Length, 9, 13);
    }

    // CarryAtLeastTests says why.
    [Fact]
    public void The_price_never_falls_as_more_is_asked_where_it_is_proven()
    {
        Assert.All(Traded.Drafts.Select(d => d.Made!.Arrangement.Status), status => Assert.Equal(status.Bound, status.Price));
        Assert.Equal(13, Traded.Drafts.Count);
        Assert.Empty(Traded.Drafts.SelectMany(d => d.Made!.Arrangement.Totals.LeftOut));
        Assert.Equal(Traded.Drafts.Select(d => d.Compared.Figures!.Price).Order(), Traded.Drafts.Select(d => d.Compared.Figures!.Price));
        Assert.True(Traded.Drafts[0].Compared.Figures!.Price < Traded.Drafts[^1].Compared.Figures!.Price);
    }

    [Fact]
    public void What_is_asked_rises_in_even_steps_from_the_weakest_chord_to_the_target_and_is_kept()
    {
        var weakest = Traded.Drafts[0].Made!.WeakestCarry!.Value.Value;
        Assert.Null(Traded.Drafts[0].Asked);
        Assert.Equal(ShippedSounds.Default.CarryTarget, Traded.Drafts[^1].Asked);
        (double Asked, double Weakest)[] asked = [.. Traded.Drafts.Skip(1).Select(d => (d.Asked!.Value.Value, d.Made!.WeakestCarry!.Value.Value))];
        Assert.All(asked.Index(), d => Assert.Equal(weakest + ((d.Index + 1) * (4 - weakest) / 12), d.Item.Asked, 0.0051));

        // No voicing of the last chord reaches the target.
        Assert.All(asked.SkipLast(1), d => Assert.True(d.Weakest >= d.Asked - 1e-6));
    }

    [Fact]
    public void The_sound_of_each_written_and_read_makes_that_draft_again() => Assert.All(Traded.Points, point =>
    {
        var read = Assert.IsType<Revoicer.Text.Reading<Sound>.Accepted>(SoundFile.Read("point.toml", SoundWriting.Text(point.Sound, "A point."))).Value;
        Assert.Equal(point.Sound, read);
        Assert.Equal(point.Compared.Drafting, Revoicing.Draft(Sheet(ThreeBuoys), ShippedTowers.Default, read, DraftWish.None, null, TestContext.Current.CancellationToken));
    });

    [Fact]
    public void Where_every_chord_reaches_the_target_there_is_nothing_to_trade()
    {
        var modest = Trade(ThreeBuoys, ShippedSounds.Default with { CarryTarget = new Decibels(-9) });
        Assert.Single(modest.Drafts);
        Assert.Contains("there is nothing to trade: every chord carries the -9.0 dB at which the sound aims", TradeOffText.Of(modest), StringComparison.Ordinal);
        var quick = Trade("title: Rush\nkey: C\ntime: 4/4\ntempo: 300\n| C G C G | C G C G ||\n", ShippedSounds.Default);
        Assert.Contains("there is nothing to trade: no chord lasts 0.8 s", TradeOffText.Of(quick), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_tune_lies_in_different_places_what_it_clashes_with_itself_counts()
    {
        var (low, high) = (Point(100, 1, octaves: 0, ofTune: 50), Point(90, 2, octaves: 1, ofTune: 80));
        var moving = new TradeOff("Ebb", low.Compared, new Decibels(4), [low, high]);
        Assert.True(moving.TuneMoves);
        Assert.Equal([150, 170], moving.Points.Select(p => moving.Clash(p.Compared.Figures!)));
        Assert.Contains("the tune lies in different places", TradeOffText.Of(moving), StringComparison.Ordinal);
        Assert.Equal([high], (moving with { Drafts = [high, Point(95, 1, octaves: 1, ofTune: 80)] }).Points);
    }

    [Fact]
    public void Its_text_reads_well() => Expected.Text("three-buoys-traded", TradeOffText.Of(Traded));

    // docs/files.md describes this shape.
    [Fact]
    public void The_shape_of_the_json_is_kept()
    {
        var failed = new TradeOffPoint(ShippedSounds.Default, SomeFigures.Unplayable(0));
        using var json = JsonDocument.Parse(TradeOffJson.Write(Traded with { Drafts = Traded.Drafts.Append(failed).ToItems() }));
        Expected.Text("trade-off-json-shape", string.Concat(JsonShape.Of(json.RootElement).Distinct().Select(line => line + "\n")));
    }

    private static TradeOff Sample((int Clash, int Carry)[] drawn)
    {
        var points = drawn.Select(d => Point(d.Clash, d.Carry)).ToItems();
        return new TradeOff("Ebb", points[0].Compared, new Decibels(9), points);
    }

    // No strokes are struck twice alike, so that none counts as the same: they lie at different times.
    private static TradeOffPoint Point(double clash, double carry, int octaves = 0, double ofTune = 0)
    {
        var draft = SampleArrangements.HarbourLights with { TuneOctaves = octaves };
        var strokes = draft.Strokes.Select(s => s with { At = s.At + new Seconds(carry + (100 * clash)) }).ToItems();
        var compared = SomeFigures.At(0, 1) with
        {
            Drafting = new Drafting.Made(draft with { Strokes = strokes }),
            Figures = SomeFigures.Figures with { ClashDose = clash, TuneDose = ofTune, Carry = new Decibels(carry) },
        };
        return new TradeOffPoint(ShippedSounds.Default, compared);
    }

    private static LeadSheet Sheet(string text) => RevoicingTests.Read("three-buoys.chords", text);

    private static TradeOff Trade(string sheet, Sound sound) =>
        TradingOff.Of(Sheet(sheet), ShippedTowers.Default, sound, 0, DraftWish.None, TimeProvider.System, null, TestContext.Current.CancellationToken);
}
