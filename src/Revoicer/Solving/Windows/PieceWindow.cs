using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Windows;

/// <summary>
/// Some slots in a row of a long piece, solved as a piece by themselves and then fitted to what is chosen around them. What
/// they need to be priced is thrown away once nothing is asked of them any more.
/// </summary>
internal sealed class PieceWindow
{
    private readonly RuleBook _book;
    private readonly IReadOnlyList<Rule> _rules;
    private SheetPrices? _prices;
    private int[] _choice;
    private Candidate[] _fitted = [];

    /// <param name="from">The first slot.</param>
    /// <param name="prices">The slots, numbered from 0.</param>
    /// <param name="rules">The rules.</param>
    /// <param name="book">The same worked out for these slots.</param>
    /// <param name="choice">What is chosen for them by themselves.</param>
    /// <param name="bound">By themselves they cost no less.</param>
    public PieceWindow(int from, SheetPrices prices, IReadOnlyList<Rule> rules, RuleBook book, int[] choice, long bound)
    {
        (From, Count, _prices, _rules, _book) = (from, prices.Count, prices, rules, book);
        (_choice, Bound) = (choice, bound);
    }

    /// <summary>The first slot.</summary>
    public int From { get; }

    /// <summary>How many slots there are.</summary>
    public int Count { get; }

    /// <summary>By themselves they cost no less.</summary>
    public long Bound { get; }

    /// <summary>Where a rule was lifted.</summary>
    public IReadOnlyList<string> Lifted => _book.Lifted;

    /// <summary>How often it has been fitted to what is around it.</summary>
    public int Fittings { get; private set; }

    /// <summary>Whether its last word is said.</summary>
    public bool IsFinished => _prices is null;

    /// <summary>For each slot the candidates that are still asked for, once it is finished.</summary>
    public Items<Candidate>[] Kept { get; private set; } = [];

    /// <summary>For each slot which of them is chosen.</summary>
    public int[] Chosen { get; private set; } = [];

    /// <summary>For each slot what can be said of it; numbers are places in the candidates that are kept.</summary>
    public SlotOutcome[] Outcomes { get; private set; } = [];

    /// <summary>What is chosen for a slot of the piece.</summary>
    public Candidate At(int slot) => _prices is { } prices
        ? prices.Candidates(slot - From)[_choice[slot - From]]
        : Kept[slot - From][Chosen[slot - From]];

    /// <summary>Changes it slot by slot for the better beside what is chosen around it.</summary>
    /// <param name="around">The slots around it, each with its one candidate, numbered after those of the window.</param>
    /// <param name="link">Links two slots.</param>
    /// <param name="deadline">When it is left as it is.</param>
    /// <param name="cancel">Stops the work.</param>
    public void Fit(PricedSlot[] around, Func<PricedSlot, PricedSlot, SlotLink?> link, Deadline deadline, CancellationToken cancel)
    {
        // Beside the same it is fitted already.
        Candidate[] fitted = [.. around.Select(s => s.Candidates[0])];
        Fittings++;
        if (deadline.HasPassed || (Fittings > 1 && fitted.SequenceEqual(_fitted)))
        {
            return;
        }

        int[][] allowed = [.. _book.Allowed, .. around.Select(_ => new[] { 0 })];
        int[] start = [.. _choice, .. around.Select(_ => 0)];
        _choice = Steering.Polished(Beside(around, link), allowed, _book.Counters, [], start, cancel)[..Count];
        _fitted = fitted;
    }

    /// <summary>Says what can be said of each slot, and throws all candidates away of which nothing is said.</summary>
    /// <param name="around">As in <see cref="Fit"/>, all that the window has to do with.</param>
    /// <param name="link">Links two slots.</param>
    /// <param name="deadline">When nothing more is said.</param>
    /// <param name="cancel">Stops the work.</param>
    public void Finish(PricedSlot[] around, Func<PricedSlot, PricedSlot, SlotLink?> link, Deadline deadline, CancellationToken cancel)
    {
        var own = _prices!.Plan.Slots;
        int[] choice = [.. _choice, .. around.Select(_ => 0)];
        var prices = deadline.HasPassed ? _prices : Beside(around, link);
        var hindsight = new Hindsight(prices, _rules, _book, choice);
        var outcomes = own.AsParallel().AsOrdered().WithCancellation(cancel)
            .Select(slot => deadline.HasPassed ? SlotOutcome.Unknown : hindsight.Of(slot))
            .ToArray();
        Keep(outcomes);
    }

    /// <summary>Says nothing of its slots, and throws all candidates away but what is chosen.</summary>
    public void Leave() => Keep([.. Enumerable.Repeat(SlotOutcome.Unknown, Count)]);

    private void Keep(SlotOutcome[] outcomes)
    {
        var (own, prices) = (_prices!.Plan.Slots, _prices);
        (Kept, Chosen, Outcomes) = (new Items<Candidate>[Count], new int[Count], new SlotOutcome[Count]);
        foreach (var slot in own)
        {
            var candidates = prices.Candidates(slot.Index);
            var asItWas = Enumerable.Range(0, candidates.Count).Where(c => slot.Original?.DistanceTo(candidates[c]) == 0);
            int[] kept = [.. outcomes[slot.Index].Candidates.Concat(asItWas).Append(_choice[slot.Index]).Distinct().Order()];
            Kept[slot.Index] = kept.Select(c => candidates[c]).ToItems();
            Chosen[slot.Index] = Array.IndexOf(kept, _choice[slot.Index]);
            Outcomes[slot.Index] = outcomes[slot.Index].Numbered(c => Array.IndexOf(kept, c));
        }

        _prices = null;
    }

    private SheetPrices Beside(PricedSlot[] around, Func<PricedSlot, PricedSlot, SlotLink?> link)
    {
        var prices = _prices!;
        var own = Enumerable.Range(0, Count).Select(prices.Slot).ToArray();
        var links = own.AsParallel().AsOrdered().SelectMany(_ => around, link).OfType<SlotLink>();
        var plan = prices.Plan with { Slots = [.. prices.Plan.Slots, .. around.Select(s => s.Slot)] };
        return prices.Beside(plan, around, links);
    }
}
