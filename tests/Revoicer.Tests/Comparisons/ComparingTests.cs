using System.Text;
using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.LeadSheets;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Writing.Json;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests.Comparisons;

public sealed class ComparingTests
{
    private const string TwoBuoys = """
        title: Two Buoys
        key: C
        time: 3/4
        tempo: 96
        | C | Dm7/C | G7 | C ||
        """;

    // Four octaves less a tone: on C3 to C7 without C#3 and D#3 it fits in few keys only.
    private const string Wide = "X:1\nT:Wide\nM:4/4\nL:1/1\nQ:1/4=60\nK:C\n\"C\"C, | b' |]\n";

    private static readonly Items<Sound> Sounds = ShippedSounds.Names.Select(ShippedSounds.Named).ToItems();

    private static readonly Items<Tower> Towers = [ShippedTowers.Default, ShippedTowers.Named("chapel-23")];

    private static readonly Comparison Compared = Compare(TwoBuoys, new SettingChoices(Towers, Sounds, [LayoutWish.Above], [-1, 0, 2]), DraftWish.None);

    [Fact]
    public void Every_draft_is_what_drafting_that_setting_alone_gives()
    {
        var alone =
            from tower in Towers
            from sound in Sounds
            from semitones in new[] { -1, 0, 2 }
            select Revoicing.Draft(Sheet(TwoBuoys).Higher(semitones), tower, sound, DraftWish.None, null, TestContext.Current.CancellationToken);
        Assert.Equal(alone, Compared.Settings.Select(s => s.Drafting));
    }

    // Drafts side by side are stopped at different depths, some by a token that is linked to the player's.
    [Fact]
    public void Broken_off_it_ends_in_one_exception_with_the_players_token()
    {
        using var source = new CancellationTokenSource();
        var choices = new SettingChoices(Towers, Sounds, [LayoutWish.Above], Comparing.FullRound);
        var thrown = Assert.ThrowsAny<OperationCanceledException>(() =>
            Comparing.Of(Sheet(TwoBuoys), choices, DraftWish.None, TimeProvider.System, new AtOnce<int>(_ => source.Cancel()), source.Token));
        Assert.Equal(source.Token, thrown.CancellationToken);
    }

    [Fact]
    public void A_second_run_gives_the_same_but_for_the_times()
    {
        var again = Compare(TwoBuoys, new SettingChoices(Towers, Sounds, [LayoutWish.Above], [-1, 0, 2]), DraftWish.None);
        Assert.Equal(ComparisonJson.Write(Compared), ComparisonJson.Write(again));
    }

    [Fact]
    public void Each_tower_and_sound_has_a_key_recommended_and_without_several_keys_none_has()
    {
        Assert.Equal(
            Compared.Settings.Select(s => (s.Setting.Tower, s.Setting.Sound)).Distinct(),
            Compared.Advice.Select(a => (a.Chosen.Setting.Tower, a.Chosen.Setting.Sound)));
        Assert.Empty(Compare(TwoBuoys, new SettingChoices(Towers, Sounds, [LayoutWish.Above], [0]), DraftWish.None).Advice);
    }

    [Fact]
    public void Figures_are_counted_from_the_strokes()
    {
        Assert.All(Compared.Settings, setting =>
        {
            var (draft, figures) = (setting.Made!.Arrangement, setting.Figures!);
            Assert.Equal(draft.Strokes.Count, figures.Strokes);
            Assert.Equal(draft.Choices.Max(c => c.Clash.Whole), figures.Worst.Clash.Whole);
            Assert.Equal(draft.Choices.Count(c => c.Strokes.Any(s => s.Lead.Value > 0)), figures.Rolls);
            var lowest = draft.Choices.Select(c => c.Strokes.Select(s => s.Note.Midi).Distinct().Order().Take(2).ToArray()).Where(two => two.Length == 2).ToArray();
            Assert.Equal(lowest.Count(two => two[1] - two[0] >= 15), Math.Round(figures.TenthsAndWider * lowest.Length));
        });
    }

    // Prices of pairs stand once in the terms of the whole.
    [Fact]
    public void The_terms_of_a_draft_add_up_to_its_price() => Assert.All(
        Compared.Settings, s => Assert.Equal(s.Made!.Arrangement.Totals.Price, s.Made.Terms.Sum(t => t.Thousandths)));

    [Fact]
    public void The_plain_hand_has_the_dose_and_strokes_that_the_draft_is_held_against()
    {
        var made = Compare(TwoBuoys, new SettingChoices(Towers, Sounds, [LayoutWish.Above], [0]), DraftWish.None with { WithPlainHand = true });
        Assert.All(made.Settings, s =>
        {
            Assert.Equal(s.Made!.Arrangement.Totals.PlainHandDose, s.PlainHand!.ClashDose, 9);
            Assert.Equal(s.Made.Arrangement.Totals.PlainHandStrokes, s.PlainHand.Strokes);
        });
        Assert.Equal(Compared.Settings[1].Made!.Arrangement, made.Settings[0].Made!.Arrangement);
    }

    [Fact]
    public void An_arrangement_differs_from_itself_nowhere_and_from_another_by_what_its_chords_cost()
    {
        var (first, other) = (Compared.Settings[1].Made!.Arrangement, Compared.Settings[7].Made!.Arrangement);
        Assert.Empty(ChordDifference.Between(first, first));
        var differences = ChordDifference.Between(first, other);
        Assert.NotEmpty(differences);
        Assert.All(differences, d => Assert.Equal(
            d.Other.Terms.Sum(t => t.Thousandths) - d.First.Terms.Sum(t => t.Thousandths), d.Terms.Sum(t => t.Thousandths)));
        Assert.Equal(differences.Select(d => d.First), ChordDifference.Between(other, first).Select(d => d.Other));
    }

    [Fact]
    public void A_key_in_which_nothing_fits_is_told_and_the_others_are_drafted()
    {
        var compared = Compare(Wide, new SettingChoices([ShippedTowers.Default], [ShippedSounds.Default], [LayoutWish.Above], [-1, 0, 1]), DraftWish.None, "wide.abc");
        Assert.Equal([false, true, false], compared.Settings.Select(s => s.Figures is not null));
        Assert.All(compared.Settings, s => Assert.Equal(s.Figures is not null, s.Fit.TuneFits));
        Assert.Contains("in no octave has Merrowhaven Harbour Tower all its bells", compared.Settings[0].Obstacles[0], StringComparison.Ordinal);
        Assert.Contains("no draft (2)", ComparisonText.Of(compared), StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_of_a_small_sheet_reads_well()
    {
        Expected.Text("two-buoys-in-keys", ComparisonText.Of(Compare(
            TwoBuoys, new SettingChoices([ShippedTowers.Default], [ShippedSounds.Default], [LayoutWish.Above], Comparing.FullRound), DraftWish.None)));
        var timed = Compare(TwoBuoys, new SettingChoices(Towers, [Sounds[0], Sounds[2]], [LayoutWish.Above], [0]), DraftWish.None with { WithPlainHand = true });
        Expected.Text("two-buoys-compared", ComparisonText.Of(timed) + "\n" + ChordDifferencesText.Of(timed) + ChordDifferencesText.OfBar(timed, 3));
    }

    // docs/files.md describes this shape.
    [Fact]
    public void The_shape_of_the_json_is_kept()
    {
        var made = Compare(TwoBuoys, new SettingChoices([ShippedTowers.Default], [ShippedSounds.Default], [LayoutWish.Above], [0, 2]), DraftWish.None with { WithPlainHand = true });
        var tune = Compare(Wide, new SettingChoices([ShippedTowers.Default], [ShippedSounds.Default], [LayoutWish.Best], [-1, 0]), DraftWish.None, "wide.abc");
        using var json = JsonDocument.Parse(ComparisonJson.Write(made));
        using var withTune = JsonDocument.Parse(ComparisonJson.Write(tune));
        Expected.Text("comparison-json-shape", string.Concat(
            JsonShape.Of(json.RootElement).Distinct().Append("with a tune, and a key that cannot be played:").Concat(JsonShape.Of(withTune.RootElement).Distinct()).Select(line => line + "\n")));
        Assert.DoesNotContain("seconds", Encoding.UTF8.GetString(ComparisonJson.Write(made)), StringComparison.OrdinalIgnoreCase);
    }

    private static LeadSheet Sheet(string text, string name = "two-buoys.chords") => RevoicingTests.Read(name, text);

    private static Comparison Compare(string sheet, SettingChoices choices, DraftWish wish, string name = "two-buoys.chords") =>
        Comparing.Of(Sheet(sheet, name), choices, wish, new StoppedClock(), null, TestContext.Current.CancellationToken);

    // Times are the machine's; here none passes.
    private sealed class StoppedClock : TimeProvider
    {
        public override long GetTimestamp() => 0;
    }

    // The framework's own progress tells later, on another thread.
    private sealed class AtOnce<T>(Action<T> hear) : IProgress<T>
    {
        public void Report(T value) => hear(value);
    }
}
