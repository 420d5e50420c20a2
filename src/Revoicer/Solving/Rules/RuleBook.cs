using Revoicer.Prices;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>The rules of one search, worked out for its slots and candidates.</summary>
internal sealed class RuleBook
{
    private readonly List<string> _lifted = [];

    /// <summary>For each slot the candidates that the slot rules leave.</summary>
    public required int[][] Allowed { get; init; }

    /// <summary>The counting rules.</summary>
    public required Counters Counters { get; init; }

    /// <summary>Where a rule could not be kept and was lifted, in sentences.</summary>
    public IReadOnlyList<string> Lifted => _lifted;

    /// <summary>Works the rules out. A slot rule that no candidate of a slot meets is lifted there.</summary>
    public static RuleBook For(IReadOnlyList<Rule> rules, SheetPrices prices)
    {
        var slots = prices.Plan.Slots;
        var book = new RuleBook
        {
            Allowed = new int[slots.Count][],
            Counters = Counters.Of(rules.OfType<PhraseRule>(), slots, prices.Plan.Phrases, prices.Candidates),
        };
        foreach (var slot in slots)
        {
            book.Allowed[slot.Index] = book.Filter(slot, prices.Candidates(slot.Index), rules.OfType<SlotRule>());
        }

        return book;
    }

    private int[] Filter(Slot slot, Items<Candidate> candidates, IEnumerable<SlotRule> rules)
    {
        var left = Enumerable.Range(0, candidates.Count).ToArray();
        foreach (var rule in rules.Where(r => r.Concerns(slot)))
        {
            var kept = left.Where(c => rule.Allows(slot, candidates[c])).ToArray();
            if (kept.Length == 0)
            {
                _lifted.Add($"{slot.Place}, {slot.Symbol}: no voicing of this tower keeps that {rule.Words}, so it was lifted there");
                continue;
            }

            left = kept;
        }

        return left;
    }
}
