using System.Collections.Concurrent;
using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Windows;

/// <summary>
/// Of every slot a few candidates, for an answer in little time: those that the slot rules leave, the cheapest by themselves,
/// and of those that a counting rule does not count the cheapest besides, so that every rule can be met.
/// </summary>
/// <param name="pricing">Prices the slots.</param>
/// <param name="list">Lists all candidates of a slot.</param>
/// <param name="rules">What every arrangement keeps.</param>
internal sealed class FewCandidates(SlotPricing pricing, Func<Slot, Items<Candidate>> list, IReadOnlyList<Rule> rules)
{
    // How many are enough for a good answer and few enough to be quick. Estimates.
    private const int Cheapest = 48;
    private const int CheapestOfRule = 8;

    private readonly ConcurrentDictionary<int, long> _least = new();

    /// <summary>A few candidates of a slot, in the order of the list.</summary>
    public Items<Candidate> Of(Slot slot)
    {
        var priced = pricing.Useful(slot, list(slot));
        _least[slot.Index] = priced.Prices.Min();
        int[] allowed = CheapestFirst.Sort(priced.Prices, Allowed(slot, priced));
        PhraseRule[] counting = [.. rules.OfType<PhraseRule>()];
        var kept = allowed.Take(Cheapest)
            .Concat(counting.SelectMany(rule => Uncounted(rule)))
            .Concat(Uncounted([.. counting.Where(rule => !rule.IsSeldom)]))
            .Concat(Uncounted(counting))
            .Concat(allowed.Where(c => slot.Original?.DistanceTo(priced.Candidates[c]) == 0));
        return kept.Distinct().Order().Select(c => priced.Candidates[c]).ToItems();

        IEnumerable<int> Uncounted(params PhraseRule[] counting) =>
            allowed.Where(c => counting.All(rule => rule.Count(slot, priced.Candidates[c]) == 0)).Take(CheapestOfRule);
    }

    /// <summary>What some slots in a row, of all of which a few were asked for, cost at the least: the cheapest of all candidates of each by themselves.</summary>
    public long Least(int from, int count) => Enumerable.Range(from, count).Sum(slot => _least[slot]);

    // As the rule book has it: a rule that nothing meets takes nothing away.
    private int[] Allowed(Slot slot, PricedSlot priced)
    {
        int[] left = [.. Enumerable.Range(0, priced.Candidates.Count)];
        foreach (var rule in rules.OfType<SlotRule>().Where(rule => rule.Concerns(slot)))
        {
            int[] kept = [.. left.Where(c => rule.Allows(slot, priced.Candidates[c]))];
            left = kept.Length > 0 ? kept : left;
        }

        return rules.OfType<CarryAtLeast>().Aggregate(left, (some, rule) => rule.Left(slot, some, priced.Carry, c => priced.Candidates[c].Approach is not null));
    }
}
