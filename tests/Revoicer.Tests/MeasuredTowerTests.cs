using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Tests.Clashes;
using Revoicer.Text;
using Revoicer.Voicings;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests;

/// <summary>
/// What a tower file says of its bells reaches the draft. Bells whose tierce is a major third were cast after A. Lehr and
/// A. Houtsma in the 1980s (from memory), so that a major chord meets no minor third of its own.
/// </summary>
public sealed class MeasuredTowerTests
{
    private const double MajorThird = 1.25;

    // 2.7 semitones in place of 3.1.
    private const double FlatTierce = 1.17;

    private static readonly LeadSheet Sheet = ((Reading<LeadSheet>.Accepted)ChordGridReader.Read(
        "nets.chords", "title: Nets\nkey: C\ntime: 4/4\ntempo: 80\n| C | F | G7 | C | Am | Dm | G | C ||")).Value;

    private static Tower Default => ShippedTowers.Default;

    // The root's tierce meets the played third. The third's own tierce, G sharp over E, now stands against the fifth, so that
    // the triad as a whole is no smoother for it.
    [Fact]
    public void On_major_third_bells_a_major_triad_clashes_less_than_a_minor_one_and_a_major_third_less_than_half_as_on_others()
    {
        var (measured, shipped) = (Bells(WithTierces(MajorThird, "great-56")), Bells(ShippedTowers.Named("great-56")));
        Assert.All(Enumerable.Range(60, 8), root =>
        {
            Assert.True(measured.Major(root, 0, 4, 7) < measured.Minor(root, 0, 3, 7), $"major against minor on {root}");
            Assert.True(measured.Major(root, 0, 4) < shipped.Major(root, 0, 4) / 2, $"against other bells on {root}");
        });
    }

    // By hand: at C4 the tierce then lies 5 Hz from the prime of E flat 4 (311.1 Hz), before 1.8 Hz; the curve peaks at 18 Hz.
    [Fact]
    public void On_bells_with_a_flat_tierce_a_minor_third_is_rougher()
    {
        var (measured, shipped) = (Bells(WithTierces(FlatTierce, "great-56")), Bells(ShippedTowers.Named("great-56")));
        Assert.All(Enumerable.Range(60, 8), lower => Assert.True(measured.Two(lower, 3) > shipped.Two(lower, 3)));
    }

    [Theory]
    [InlineData(MajorThird)]
    [InlineData(1.13)]
    public void The_draft_is_chosen_for_the_bells_as_measured(double tierce)
    {
        var tower = WithTierces(tierce);
        var (shippedChoice, _, _) = Best(Default);
        var (choice, price, prices) = Best(tower);

        Assert.NotEqual(shippedChoice, choice);
        Assert.True(prices.Whole(shippedChoice) > price, "what was best on other bells costs more on these");
    }

    [Fact]
    public void On_major_third_bells_the_draft_of_major_chords_contradicts_them_less_and_says_that_they_are_measured()
    {
        var (measured, shipped) = (Draft(WithTierces(MajorThird)), Draft(Default));
        double[] contradictions = [.. new[] { measured, shipped }.Select(d => d.Choices.Take(4).Sum(c => c.Clash.Contradiction))];

        Assert.True(contradictions[0] < 0.6 * contradictions[1], string.Join(" and ", contradictions));
        Assert.Equal(47, measured.Tower.MeasuredBells);
        Assert.Contains("47 of them measured", RationaleText.Of(measured).Replace("\n             ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    public static TheoryData<string> Demos => [.. RepositoryFiles.All("leadsheets-demo", "*.chords"), .. RepositoryFiles.All("leadsheets-demo", "*.abc")];

    /// <summary>Partials move together and classes are counted from the bell, so only the bandwidth's slow change tells.</summary>
    [Theory]
    [MemberData(nameof(Demos))]
    public void A_tower_tuned_42_cents_high_strikes_the_same_bells_in_nine_slots_of_ten(string file)
    {
        var sheet = RevoicingTests.Read(file, File.ReadAllText(file));
        var high = Draft(TowerOf(ShippedTowers.Text("harbour-47") + "\n", "sounds = 12", "sounds = 12\ncents = 42"), sheet);
        var concert = DemoDrafts.Of(file);
        var same = high.Choices.Zip(concert.Choices).Count(c => Notes(c.First).SequenceEqual(Notes(c.Second)));

        Assert.Equal(high.Choices.Count, concert.Choices.Count);
        Assert.InRange(same / (double)concert.Choices.Count, 0.9, 1);

        static IEnumerable<int> Notes(Choice choice) => choice.Strokes.Select(s => s.Note.Midi).Order();
    }

    private static FactBells Bells(Tower tower) => new(tower, Fade.Default);

    private static Arrangement Draft(Tower tower, LeadSheet? sheet = null) => Assert.IsType<Drafting.Made>(
        Revoicing.Draft(sheet ?? Sheet, tower, ShippedSounds.Default, DraftWish.None, null, TestContext.Current.CancellationToken)).Arrangement;

    private static (int[] Choice, long Price, SheetPrices Prices) Best(Tower tower)
    {
        var sound = ShippedSounds.Default;
        var instrument = new Instrument(tower, sound);
        var plan = SlotCutting.Cut(Sheet, SheetTempi.Of(Sheet, Sheet.Tempo!.Value));
        var search = new CandidateSearch(tower, instrument.Reach, sound.RollStep);
        var prices = SheetPrices.Of(instrument, sound, plan, [.. plan.Slots.Select(search.List)], TestContext.Current.CancellationToken);
        var found = Assert.IsType<Outcome.Found>(Search.Run(prices, SoundRules.Of(sound), ProofEffort.Quick, TestContext.Current.CancellationToken));
        return ([.. found.Choice], found.Price, prices);
    }

    // A shipped tower with its tierces measured, the rest left to the default bell.
    private static Tower WithTierces(double ratio, string name = "harbour-47") => TowerOf(
        ShippedTowers.Text(name) + string.Concat(ShippedTowers.Named(name).Bells.Select(b => string.Create(
            CultureInfo.InvariantCulture,
            $"\n[[bell]]\nkey = \"{b.Note}\"\n\n[[bell.partial]]\nname = \"tierce\"\nhertz = {b.Strike.Value * ratio:0.0000}\n"))));

    private static Tower TowerOf(string text, string old = "", string @new = "")
    {
        Assert.Contains(old, text, StringComparison.Ordinal);
        return Assert.IsType<Reading<Tower>.Accepted>(TowerFile.Read("own.toml", old == "" ? text : text.Replace(old, @new, StringComparison.Ordinal))).Value;
    }
}
