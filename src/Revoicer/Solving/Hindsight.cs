using Revoicer.Prices;
using Revoicer.Solving.Rules;
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
        return new SlotOutcome(runnerUp, costs[cheapest] < costs[chosen] ? InTheWay(rules, slot, candidates[cheapest]) : null);
    }

    private static string? InTheWay(IReadOnlyList<Rule> rules, Slot slot, Candidate cheaper) =>
        rules.FirstOrDefault(rule => rule switch
        {
            SlotRule onSlot => onSlot.Concerns(slot) && !onSlot.Allows(slot, cheaper),
            PhraseRule inPhrase => inPhrase.Counts(slot, cheaper),
            _ => false,
        })?.Words;
}
