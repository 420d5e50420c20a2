using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Tests.Oracles;
using Revoicer.Tests.Prices;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>
/// The rule that chords carry at least so far. What it leaves of a slot are the candidates that carry min(x, most), x being asked and
/// most what the farthest carrying one does; min(x, most) never falls as x rises, so what is left for more is among what is left
/// for less. A phrase's count that the candidates left cannot keep is eased, and then answers are let in that were not before;
/// else those that keep the rules for more are among those that keep them for less, and the cheapest of them is no cheaper.
/// That speaks of the whole price alone: the clash in it may fall where something else grows.
/// </summary>
public sealed class CarryAtLeastTests
{
    private static readonly string[][] Sheets = [["C", "G7", "C"], ["Em G7", "C"], ["Cmaj7", "Em", "G7"], ["Dm7 G7", "C"]];

    private static readonly Sound Unpriced = ShippedSounds.Default with { CarryShortfall = 0 };

    private static readonly PricedSheet Small = SmallSheets.Priced(SmallSheets.Sheet(["C", "Em", "C"]), SmallSheets.EightBells, Unpriced);

    [Law(MaxTest = 40)]
    public void The_price_never_falls_as_more_is_asked(int seed)
    {
        var random = new Random(seed);
        var sheet = SmallSheets.Priced(SmallSheets.Sheet(Sheets[random.Next(Sheets.Length)]), ShippedTowers.Named("chapel-23"), Unpriced);
        var less = (random.NextDouble() * 12) - 6;
        if (Search.Run(sheet.Prices, Rules(less), ProofEffort.Quick, TestContext.Current.CancellationToken) is Outcome.Found before
            && Search.Run(sheet.Prices, Rules(less + (random.NextDouble() * 6)), ProofEffort.Quick, TestContext.Current.CancellationToken) is Outcome.Found after
            && before.Lifted == after.Lifted)
        {
            Assert.True(after.Price >= before.Bound);
        }
    }

    [Law(MaxTest = 40)]
    public void Of_a_chord_more_leaves_no_voicing_that_less_does_not_and_always_one(int seed)
    {
        var random = new Random(seed);
        var less = (random.NextDouble() * 20) - 10;
        var (before, after) = (Allowed(Small, less), Allowed(Small, less + (random.NextDouble() * 10)));
        Assert.All(before.Zip(after), slot => Assert.Subset(slot.First.ToHashSet(), slot.Second.ToHashSet()));
        Assert.All(after, Assert.NotEmpty);
    }

    // So that the laws above do not hold for want of anything to change.
    [Fact]
    public void Asking_for_more_does_cost_more() => Assert.True(Found(Small, 2).Price > Found(Small, -10).Price);

    [Theory]
    [InlineData(-2)]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(40)]
    public void The_answer_is_the_cheapest_of_all_choices_whose_chords_carry_so_far(double least)
    {
        var rootLowest = new RootLowest();
        var slots = Small.Plan.Slots;
        int[][] kept = [.. slots.Select(s => KeptBySum(s.Index, least, c => !rootLowest.Concerns(s) || rootLowest.Allows(s, Small.Candidates[s.Index][c])))];
        var table = TablePrices.Copy(Small.Prices, kept);
        int[][] all = [.. kept.Select(slot => Enumerable.Range(0, slot.Length).ToArray())];

        var found = Assert.IsType<Outcome.Found>(Search.Run(
            Small.Prices, [rootLowest, new CarryAtLeast(new Decibels(least))], ProofEffort.Quick, TestContext.Current.CancellationToken));

        Assert.Equal(BruteForce.Least(all, _ => true, table.Price), found.Price);
        Assert.Equal(found.Price, found.Bound);
    }

    [Fact]
    public void Quick_chords_may_ring_through()
    {
        // 300 quarters a minute: two beats are 0.4 s.
        var quick = SmallSheets.Priced(SmallSheets.Sheet(["C Em"]), SmallSheets.EightBells, Unpriced, quarters: 300);
        var allowed = Allowed(quick, 3);

        Assert.True(quick.Plan.Slots[1].IsQuick);
        Assert.Contains(allowed[1], c => quick.Candidates[1][c].Strokes.Count == 0);
        Assert.Null(quick.Prices.WeakestCarry([.. quick.Candidates.Select(_ => 0)]));
    }

    [Fact]
    public void The_weakest_chord_is_the_one_with_the_least_energy_for_its_time()
    {
        var choice = SmallSheets.Choice(Small, 5);
        var sounding = Small.Plan.Slots.Where(s => Small.Candidates[s.Index][choice[s.Index]].Strokes.Count > 0);
        Assert.Equal(sounding.Min(s => CarryOf(s.Index, choice[s.Index])), Small.Prices.WeakestCarry(choice)!.Value.Value, 6);
    }

    [Fact]
    public void The_shipped_sounds_ask_nothing_and_where_nothing_is_asked_there_is_no_rule()
    {
        Assert.All(ShippedSounds.Names, name => Assert.DoesNotContain(SoundRules.Of(ShippedSounds.Named(name)), r => r is CarryAtLeast));
        Assert.Single(SoundRules.Of(ShippedSounds.Default with { CarryAtLeast = new Decibels(-59.9) }), r => r is CarryAtLeast);
    }

    [Fact]
    public void Where_it_stands_in_the_way_of_something_cheaper_it_is_named()
    {
        var found = Found(Small, 40);
        Assert.Contains("chords of 0.8 s and more carry at least 40 dB, or as far as any of their voicings does", found.Slots.Select(s => s.Barred?.Rule));
    }

    // Of the loudest voicings of two chords in 0.86 s one leaves no time for the other.
    [Fact]
    public void Where_it_cannot_be_kept_with_the_time_to_move_both_are_named_and_what_would_help()
    {
        var lamps = RevoicingTests.Read("lamps-on-the-quay.chords", RepositoryFiles.Text("leadsheets-demo", "lamps-on-the-quay.chords"));
        var wish = new DraftWish(new Tempo(Beats.OfQuarters(1), 140));
        var refused = Assert.IsType<Drafting.Ruled>(Revoicing.Draft(
            lamps, ShippedTowers.Default, Unpriced with { CarryAtLeast = new Decibels(60) }, wish, null, TestContext.Current.CancellationToken));
        Assert.EndsWith(
            "from bar 3 beat 1 (Gm7) to bar 4 beat 1 (C7sus4) these cannot all be kept: chords of 0.8 s and more carry at least 60 dB, or as far as any of their voicings does; "
            + "hands and feet have time to move from chord to chord, and bells to recover; what would help: a lower at-least under [carry] of the sound",
            Assert.Single(refused.Reasons));
    }

    private static Items<Rule> Rules(double least) => SoundRules.Of(Unpriced with { CarryAtLeast = new Decibels(least) });

    private static int[][] Allowed(PricedSheet sheet, double least) => RuleBook.For(Rules(least), sheet.Prices).Allowed;

    private static Outcome.Found Found(PricedSheet sheet, double least) => Assert.IsType<Outcome.Found>(
        Search.Run(sheet.Prices, Rules(least), ProofEffort.Quick, TestContext.Current.CancellationToken));

    private static int[] KeptBySum(int slot, double least, Func<int, bool> isAllowed)
    {
        int[] allowed = [.. Enumerable.Range(0, Small.Candidates[slot].Count).Where(isAllowed)];
        var most = allowed.Max(c => CarryOf(slot, c));
        return [.. allowed.Where(c => CarryOf(slot, c) >= Math.Min(least, most) - 1e-6)];
    }

    // From the strokes, through the model and no price; silence carries nothing.
    private static double CarryOf(int slot, int candidate)
    {
        var carry = new TowerCarry(SmallSheets.EightBells, Listener.Default);
        var length = Small.Plan.Slots[slot].Duration;
        var energy = Small.Candidates[slot][candidate].Strokes.Sum(s =>
        {
            var touch = s.Note.Midi < 60 ? Unpriced.HeavyTouch.Value : 0;
            var bell = SmallSheets.EightBells.Bells.Index().Single(b => b.Item.Note == s.Note).Index;
            var after = s.After.Quarters * length.Value / Small.Plan.Slots[slot].Length.Quarters;
            return Math.Pow(10, touch / 10) * carry.CarryEnergy(bell, Seconds.Zero, new Seconds(length.Value - after));
        });
        return energy > 0 ? carry.Carry(energy, length).Value : -100;
    }
}
