using Revoicer.Music;
using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving;

/// <summary>Looks at the slots of a finished answer: which single changes every rule admits, and which rule forbids a cheaper one.</summary>
internal sealed class Hindsight
{
    private readonly SheetPrices _prices;
    private readonly RuleBook _book;
    private readonly IReadOnlyList<int> _choice;
    private readonly SlotRule[] _onSlots;
    private readonly CarryAtLeast? _carry;
    private readonly (PhraseRule Rule, Counter Counter)[] _counts;
    private readonly (OtherBells Rule, Least Least)[] _leasts;

    /// <summary>Prepares it.</summary>
    /// <param name="prices">The priced slots.</param>
    /// <param name="rules">The rules of the search.</param>
    /// <param name="book">The same, worked out.</param>
    /// <param name="choice">The answer: for each slot the number of a candidate.</param>
    public Hindsight(SheetPrices prices, IReadOnlyList<Rule> rules, RuleBook book, IReadOnlyList<int> choice)
    {
        (_prices, _book, _choice) = (prices, book, choice);
        _onSlots = [.. rules.OfType<SlotRule>()];
        _carry = rules.OfType<CarryAtLeast>().FirstOrDefault();
        _counts = [.. rules.OfType<PhraseRule>().Zip(book.Counters.All)];
        _leasts = [.. rules.OfType<OtherBells>().Zip(book.Leasts)];
    }

    /// <summary>What it says of one slot.</summary>
    public SlotOutcome Of(Slot slot)
    {
        var candidates = _prices.Candidates(slot.Index);
        int[] all = [.. Enumerable.Range(0, candidates.Count)];
        var costs = _prices.InPlace(_choice, slot.Index, all);
        var chosen = _choice[slot.Index];
        var allowed = _book.Allowed[slot.Index].ToHashSet();
        var others = CheapestFirst.Sort(costs, all.Where(c => allowed.Contains(c) && costs[c] < Thousandths.Forbidden));
        var cheapest = all.MinBy(c => costs[c]);
        return new SlotOutcome(
            Alternatives(slot, candidates, chosen, others),
            costs[cheapest] < costs[chosen] && Barring(slot, candidates, allowed, cheapest) is { } rule ? new BarredCandidate(cheapest, rule) : null);
    }

    private Items<int> Alternatives(Slot slot, Items<Candidate> candidates, int chosen, IEnumerable<int> others)
    {
        var seen = new HashSet<Items<WrittenNote>> { candidates[chosen].Notes };
        return others
            .Where(c => IsAdmitted(slot, c) && seen.Add(candidates[c].Notes))
            .Take(SlotOutcome.MostAlternatives)
            .ToItems();
    }

    private bool IsAdmitted(Slot slot, int candidate) =>
        _book.Counters.AllowsChange(_choice, slot.Index, candidate)
        && _leasts.All(l => l.Least.AllowsChange(_choice, slot.Index, candidate));

    // The rule that a candidate breaks; null where it breaks none. A slot rule that was lifted here forbids nothing.
    private string? Barring(Slot slot, Items<Candidate> candidates, HashSet<int> allowed, int candidate)
    {
        if (!allowed.Contains(candidate))
        {
            return _onSlots
                .Where(r => r.Concerns(slot) && !r.Allows(slot, candidates[candidate]))
                .FirstOrDefault(r => allowed.All(c => r.Allows(slot, candidates[c])))?.Words
                ?? _carry!.Words;
        }

        return _counts.FirstOrDefault(r => !_book.Counters.AllowsChange(r.Counter, _choice, slot.Index, candidate)).Rule?.Words
            ?? _leasts.FirstOrDefault(r => !r.Least.AllowsChange(_choice, slot.Index, candidate)).Rule?.Words;
    }
}
