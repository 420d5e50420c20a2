using Revoicer.Prices;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>The rules of one search, worked out for its slots and candidates.</summary>
internal sealed class RuleBook
{
    private RuleBook(int[][] allowed, Counters counters, IReadOnlyList<string> lifted)
    {
        Allowed = allowed;
        Counters = counters;
        Lifted = lifted;
    }

    /// <summary>For each slot the candidates that the slot rules leave.</summary>
    public int[][] Allowed { get; }

    /// <summary>The counting rules.</summary>
    public Counters Counters { get; }

    /// <summary>Where a rule could not be kept and was lifted or eased, in sentences.</summary>
    public IReadOnlyList<string> Lifted { get; }

    /// <summary>
    /// Works the rules out. A slot rule that no candidate of a slot meets is lifted there; a count that the slots of a
    /// phrase exceed whatever is chosen is eased to what they force.
    /// </summary>
    public static RuleBook For(IReadOnlyList<Rule> rules, SheetPrices prices)
    {
        var plan = prices.Plan;
        var lifted = new List<string>();
        int[][] allowed = [.. plan.Slots.Select(slot => Filter(slot, prices.Candidates(slot.Index), rules.OfType<SlotRule>(), lifted))];
        var counters = rules.OfType<PhraseRule>()
            .Select(rule => Eased(rule, Counter.Of(rule, plan, prices.Candidates), plan, allowed, lifted));
        return new RuleBook(allowed, new Counters([.. plan.Slots.Select(s => s.Phrase)], counters), lifted);
    }

    private static int[] Filter(Slot slot, Items<Candidate> candidates, IEnumerable<SlotRule> rules, List<string> lifted)
    {
        var left = Enumerable.Range(0, candidates.Count).ToArray();
        foreach (var rule in rules.Where(r => r.Concerns(slot)))
        {
            var kept = left.Where(c => rule.Allows(slot, candidates[c])).ToArray();
            if (kept.Length == 0)
            {
                lifted.Add($"{slot.Place}, {slot.Symbol}: no voicing of this tower keeps that {rule.Words}, so it was lifted there");
                continue;
            }

            left = kept;
        }

        return left;
    }

    private static Counter Eased(PhraseRule rule, Counter counter, SlotPlan plan, int[][] allowed, List<string> lifted)
    {
        int[] most = [.. counter.Most];
        foreach (var phrase in plan.Slots.GroupBy(slot => slot.Phrase))
        {
            var forced = phrase.Count(slot => allowed[slot.Index].All(c => counter.Counts[slot.Index][c]));
            if (forced > most[phrase.Key])
            {
                most[phrase.Key] = forced;
                var exceptions = forced == 1 ? "one exception is" : $"{forced} exceptions are";
                lifted.Add($"phrase from {phrase.First().Place}: no voicing of this tower keeps that {rule.Words}, so {exceptions} allowed there");
            }
        }

        return counter with { Most = most };
    }
}
