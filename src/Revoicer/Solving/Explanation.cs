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
        var clashing = Irreducible.Of(all, left => !IsPossible(prices, left, 0, int.MaxValue, cancel)).ToItems();

        // A wish has its place in its file.
        return new Conflict(clashing, null) { Stretch = clashing.Any(r => r is WishRule) ? null : StretchOf(prices, clashing, cancel) };
    }

    // The first end by which it is impossible, then the last beginning from which it still is. Where the chords outside are free
    // of the rules, a longer stretch is never more possible than a shorter one, so halves tell.
    private static (Slot From, Slot To)? StretchOf(SheetPrices prices, Items<Rule> rules, CancellationToken cancel)
    {
        var slots = prices.Plan.Slots;
        var to = First(0, slots.Count - 1, end => !IsPossible(prices, rules, 0, end, cancel));
        var from = First(0, to, skipped => IsPossible(prices, rules, skipped + 1, to, cancel));
        return from == to && !IsPossible(prices, rules, to + 1, to, cancel) ? null : (slots[from], slots[to]);
    }

    // The least number for which something holds that holds for all larger ones; the last where it holds for none below.
    private static int First(int from, int last, Func<int, bool> holds)
    {
        while (from < last)
        {
            var middle = (from + last) / 2;
            (from, last) = holds(middle) ? (from, middle) : (middle + 1, last);
        }

        return from;
    }

    private static bool IsPossible(SheetPrices prices, IReadOnlyList<Rule> rules, int from, int to, CancellationToken cancel)
    {
        var book = RuleBook.For(rules, prices).Within(prices, from, to);
        var (choice, isCertain) = AnyChoice.Of(prices, book.Allowed, book.Counters, book.Leasts, rules.Any(r => r is TimeToMove), cancel);

        // What is not certain counts as possible, so that nothing is named as impossible that may not be.
        return choice is not null || !isCertain;
    }
}
