using Revoicer.Bells;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Tests.Prices;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>Two phrases under a sound that would roll every chord, if the rule did not allow it once a phrase.</summary>
public sealed class RollsOnASheetTests
{
    private const int Most = 1;

    private static readonly Sound Rolling = ShippedSounds.Default with { RollForgone = 40, RollsPerPhrase = Most, BassFirst = 20, Afterbeats = 20, Broken = 25 };

    private static readonly PricedSheet Sheet = SmallSheets.Priced(
        SmallSheets.Sheet(["C", "Am", "F", "G7", "C", "Dm7 G7", "Am7 F", "C"]), ShippedTowers.Default, Rolling);

    private static readonly Items<Rule> Rules = SoundRules.Of(Rolling);

    [Fact]
    public void Without_the_rule_a_phrase_has_more_rolls_and_with_it_not()
    {
        var free = Found([.. Rules.Where(r => r is not RollsPerPhrase)]);
        var ruled = Found(Rules);

        Assert.Contains(RollsInPhrases(free), rolls => rolls > Most);
        Assert.All(RollsInPhrases(ruled), rolls => Assert.InRange(rolls, 0, Most));
        Assert.True(free.Price < ruled.Price);
    }

    [Fact]
    public void The_constraint_solver_and_the_search_agree_on_the_promising_candidates()
    {
        var book = RuleBook.For(Rules, Sheet.Prices);
        var bound = NeighbourBound.Of(Sheet.Prices, book.Allowed, TestContext.Current.CancellationToken);
        int[][] promising = [.. book.Allowed.Select((allowed, slot) => Promising(slot, allowed.OrderBy(c => bound.Least(slot, c))))];

        var (ended, choice, price) = ConstraintModel.Cheapest(Sheet.Prices, book.Counters, promising, longest: 60, TestContext.Current.CancellationToken);
        var found = Run(book.Counters);
        var free = Run(new Counters([.. Sheet.Plan.Slots.Select(s => s.Phrase)], []));

        Assert.True(ended && book.Counters.AreKept(choice!));
        Assert.Equal((price, price), (found.Price, found.Bound));
        Assert.True(free.Price < price, "the rule does not bite");

        BoundedChoice Run(Counters counters) =>
            Search.Run(Sheet.Prices, promising, counters, ProofEffort.Quick, TestContext.Current.CancellationToken)!.Value;
    }

    // Fifteen that are rolled and fifteen that are not.
    private static int[] Promising(int slot, IEnumerable<int> cheapestFirst)
    {
        var isRolled = cheapestFirst.ToLookup(c => Sheet.Candidates[slot][c].Figure == Figure.Rolled);
        return [.. isRolled[true].Take(15).Concat(isRolled[false].Take(15)).Order()];
    }

    private static Outcome.Found Found(IReadOnlyList<Rule> rules) =>
        Assert.IsType<Outcome.Found>(Search.Run(Sheet.Prices, rules, ProofEffort.Quick, TestContext.Current.CancellationToken));

    private static IEnumerable<int> RollsInPhrases(Outcome.Found found) => Sheet.Plan.Slots
        .GroupBy(slot => slot.Phrase)
        .Select(phrase => phrase.Count(slot => !slot.IsLast && Sheet.Candidates[slot.Index][found.Choice[slot.Index]].Figure == Figure.Rolled));
}
