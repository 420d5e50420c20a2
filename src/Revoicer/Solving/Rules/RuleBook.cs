using Revoicer.Prices;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>The rules of one search, worked out for its slots and candidates.</summary>
internal sealed class RuleBook
{
    private RuleBook(int[][] allowed, Counters counters, IReadOnlyList<Least> leasts, IReadOnlyList<string> lifted)
    {
        Allowed = allowed;
        Counters = counters;
        Leasts = leasts;
        Lifted = lifted;
    }

    /// <summary>For each slot the candidates that the slot rules leave; none where the player's wishes leave none.</summary>
    public int[][] Allowed { get; }

    /// <summary>The counting rules.</summary>
    public Counters Counters { get; }

    /// <summary>The rules that ask for a least.</summary>
    public IReadOnlyList<Least> Leasts { get; }

    /// <summary>Where a rule could not be kept and was lifted or eased, in sentences.</summary>
    public IReadOnlyList<string> Lifted { get; }

    /// <summary>
    /// Works the rules out, in their order. A slot rule that no candidate of a slot meets is lifted there, unless it is a
    /// player's wish; a count that the slots of a phrase exceed whatever is chosen is eased to what they force.
    /// </summary>
    public static RuleBook For(IReadOnlyList<Rule> rules, SheetPrices prices)
    {
        var plan = prices.Plan;
        var lifted = new List<string>();
        var why = new InTheWay(prices.Instrument);
        int[][] allowed = [.. plan.Slots.Select(slot => Filter(slot, prices.Candidates(slot.Index), rules.OfType<SlotRule>(), why, lifted))];
        foreach (var rule in rules.OfType<CarryAtLeast>())
        {
            allowed = [.. plan.Slots.Select(slot => rule.Left(slot, allowed[slot.Index], c => prices.Carry(slot.Index, c), c => prices.Candidates(slot.Index)[c].Approach is not null))];
        }

        WishRule[] wishes = [.. rules.OfType<WishRule>()];
        var counters = rules.OfType<PhraseRule>()
            .Select(rule => Eased(rule, Counter.Of(rule, plan, prices.Candidates), plan, allowed, wishes, lifted));
        return new RuleBook(
            allowed,
            new Counters([.. plan.Slots.Select(s => s.Phrase)], counters),
            [.. rules.OfType<OtherBells>().Select(rule => Least.Of(rule, plan, prices.Candidates))],
            lifted);
    }

    /// <summary>The same rules on a stretch of slots alone: outside it every candidate is allowed, and none counts.</summary>
    public RuleBook Within(SheetPrices prices, int from, int to)
    {
        bool IsInside(int slot) => slot >= from && slot <= to;
        return Enumerable.Range(0, Allowed.Length).All(IsInside) ? this : new RuleBook(
            [.. Allowed.Select((allowed, slot) => IsInside(slot) ? allowed : [.. Enumerable.Range(0, prices.Candidates(slot).Count)])],
            new Counters(
                [.. prices.Plan.Slots.Select(s => s.Phrase)],
                Counters.All.Select(c => c with { Counts = [.. c.Counts.Select((counts, slot) => IsInside(slot) ? counts : new int[counts.Length])] })),
            Leasts,
            Lifted);
    }

    private static int[] Filter(Slot slot, Items<Candidate> candidates, IEnumerable<SlotRule> rules, InTheWay why, List<string> lifted)
    {
        var left = Enumerable.Range(0, candidates.Count).ToArray();
        foreach (var rule in rules.Where(r => r.Concerns(slot)))
        {
            var kept = left.Where(c => rule.Allows(slot, candidates[c])).ToArray();
            if (kept.Length == 0 && left.Length > 0 && rule is not WishRule)
            {
                lifted.Add(rule is RootLowest && !candidates.Any(c => rule.Allows(slot, c))
                    ? why.OfRootLowest(slot)
                    : $"{slot.Place}, {slot.Symbol}: no voicing that your wishes leave keeps that {rule.Words}, so it was lifted there");
                continue;
            }

            left = kept;
        }

        lifted.AddRange(why.OfTones(slot, [.. left.Select(c => candidates[c])]) is { } fewer ? [fewer] : []);
        return left;
    }

    private static Counter Eased(PhraseRule rule, Counter counter, SlotPlan plan, int[][] allowed, WishRule[] wishes, List<string> lifted)
    {
        int[] most = [.. counter.Most];
        foreach (var phrase in plan.Slots.GroupBy(slot => slot.Phrase))
        {
            var where = phrase.Where(slot => Forced(slot) > 0).ToArray();
            var forced = where.Sum(Forced);
            if (forced > most[phrase.Key])
            {
                most[phrase.Key] = forced;
                var exceptions = where.Length == 1 ? "one exception is" : $"{where.Length} exceptions are";
                var none = where.Any(slot => wishes.Any(w => w.Concerns(slot))) ? "no voicing that your wishes leave" : "no voicing of this tower";
                lifted.Add($"phrase from {phrase.First().Place}: {none} keeps that {rule.Words}, so {exceptions} allowed there");
            }
        }

        return counter with { Most = most };

        int Forced(Slot slot) => allowed[slot.Index] is { Length: > 0 } left ? left.Min(c => counter.Counts[slot.Index][c]) : 0;
    }
}
