using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving;

/// <summary>Looks at one slot of a finished answer: which candidate came next, and which rule stood in the way of a cheaper one.</summary>
internal static class Hindsight
{
    public static SlotOutcome Of(SheetPrices prices, IReadOnlyList<Rule> rules, RuleBook book, int[] choice, Slot slot)
    {
        var candidates = prices.Candidates(slot.Index);
        int[] all = [.. Enumerable.Range(0, candidates.Count)];
        var costs = prices.InPlace(choice, slot.Index, all);
        var chosen = choice[slot.Index];
        var bells = candidates[chosen].Voicing.Notes.ToHashSet();
        var runnerUp = book.Allowed[slot.Index]
            .Where(c => !bells.SetEquals(candidates[c].Voicing.Notes))
            .Select(c => (int?)c)
            .MinBy(c => costs[c!.Value]);
        var cheapest = all.MinBy(c => costs[c]);
        var otherBells = !bells.SetEquals(candidates[cheapest].Voicing.Notes);
        return new SlotOutcome(runnerUp, otherBells && costs[cheapest] < costs[chosen] ? InTheWay(rules, book, slot, chosen, cheapest, candidates) : null);
    }

    // The slot rule that takes the cheaper candidate away, else the count that it would raise.
    private static string? InTheWay(
        IReadOnlyList<Rule> rules, RuleBook book, Slot slot, int chosen, int cheaper, Items<Candidate> candidates)
    {
        if (!book.Allowed[slot.Index].Contains(cheaper))
        {
            return rules.OfType<SlotRule>().FirstOrDefault(r => r.Concerns(slot) && !r.Allows(slot, candidates[cheaper]))?.Words
                ?? rules.OfType<CarryAtLeast>().First().Words;
        }

        return rules.OfType<PhraseRule>()
            .Zip(book.Counters.All)
            .FirstOrDefault(r => r.Second.Counts[slot.Index][cheaper] > r.Second.Counts[slot.Index][chosen])
            .First?.Words;
    }
}
