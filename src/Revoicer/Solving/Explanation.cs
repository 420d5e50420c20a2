using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving;

/// <summary>Says which rules make a search impossible: some of which none can be left out.</summary>
internal static class Explanation
{
    /// <summary>
    /// The conflicts: one for each slot to which the player's wishes leave no voicing, or else one of all rules together.
    /// </summary>
    /// <param name="prices">The priced slots.</param>
    /// <param name="rules">The rules that no choice keeps.</param>
    /// <param name="cancel">Stops it.</param>
    public static Outcome.Impossible Of(SheetPrices prices, IReadOnlyList<Rule> rules, CancellationToken cancel)
    {
        var onSlots = prices.Plan.Slots
            .Select(slot => OnSlot(slot, prices.Candidates(slot.Index), rules))
            .OfType<Conflict>()
            .DistinctBy(c => c.Rules)
            .ToItems();
        return new Outcome.Impossible(onSlots.Count > 0 ? onSlots : [OnAll(prices, rules, cancel)]);
    }

    private static Conflict? OnSlot(Slot slot, Items<Candidate> candidates, IEnumerable<Rule> rules)
    {
        var wishes = rules.OfType<WishRule>().Where(w => w.Concerns(slot)).ToList();
        return IsEmpty(wishes) ? new Conflict(Irreducible.Of(wishes, IsEmpty).ToItems<Rule>(), slot) : null;

        bool IsEmpty(IReadOnlyList<WishRule> left) => !candidates.Any(c => left.All(w => w.Allows(slot, c)));
    }

    private static Conflict OnAll(SheetPrices prices, IReadOnlyList<Rule> rules, CancellationToken cancel)
    {
        Rule[] all = [.. rules, new TimeToMove()];
        return new Conflict(Irreducible.Of(all, left => !IsPossible(prices, left, cancel)).ToItems(), null);
    }

    private static bool IsPossible(SheetPrices prices, IReadOnlyList<Rule> rules, CancellationToken cancel)
    {
        var book = RuleBook.For(rules, prices);
        var (choice, isCertain) = AnyChoice.Of(prices, book.Allowed, book.Counters, book.Leasts, rules.Any(r => r is TimeToMove), cancel);

        // What is not certain counts as possible, so that nothing is named as impossible that may not be.
        return choice is not null || !isCertain;
    }
}
