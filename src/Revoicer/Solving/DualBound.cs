using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>
/// A lower bound of the whole price over all pairs of slots, near and far, and all counting rules. The slots and their
/// neighbours are a chain, whose cheapest way is known exactly; of what a candidate's cheapest way through the chain costs
/// more than the best way, half is lent to the pairs of far slots, which give back what they charge whatever their other
/// slot does. Each step leaves the price of every choice as it is and can only raise the bound: block-coordinate ascent in
/// the dual of the local linear relaxation (Globerson and Jaakkola 2007; Tourani, Shekhovtsov, Rother and Savchynskyy 2018;
/// docs/references.md). All is integer arithmetic.
/// </summary>
internal sealed class DualBound
{
    // A half stays with the candidate. Where all is lent the ascent soon stands still: on the demos and other towers half
    // closed in 6 sweeps what was still 2 % open after 30 (shares of 0.2 to 0.65 are nearly as good).
    private const int KeptBack = 2;

    private readonly Counters _counters;
    private readonly int[][] _candidates;
    private readonly int[][] _own;
    private readonly PairTable[] _withBefore;
    private readonly LentPair[] _pairs;
    private readonly LentPair[][] _toLater;
    private readonly LentPair[][] _toEarlier;
    private readonly CountedChain _chain;
    private readonly int[][] _through;

    private DualBound(Counters counters, int[][] candidates, int[][] own, PairTable[] withBefore, LentPair[] pairs)
    {
        (_counters, _candidates, _own, _withBefore, _pairs) = (counters, candidates, own, withBefore, pairs);
        var slots = Enumerable.Range(0, candidates.Length);
        _toLater = [.. slots.Select(s => pairs.Where(p => p.First == s).ToArray())];
        _toEarlier = [.. slots.Select(s => pairs.Where(p => p.Second == s).ToArray())];
        _chain = new CountedChain(counters, candidates, own, withBefore);
        _through = new int[candidates.Length][];
        for (var slot = candidates.Length - 1; slot >= 0; slot--)
        {
            _chain.FromEnd(slot);
        }

        foreach (var slot in slots)
        {
            _chain.FromStart(slot);
            _through[slot] = _chain.Through(slot);
        }

        Bound = _through[^1].Min();
    }

    /// <summary>No choice among the candidates costs less; <see cref="PairTable.Never"/> where none keeps the counts.</summary>
    public long Bound { get; private set; }

    /// <summary>The candidates of each slot.</summary>
    public IReadOnlyList<int[]> Candidates => _candidates;

    /// <summary>How many candidates there are in all.</summary>
    public int Size => _candidates.Sum(c => c.Length);

    /// <summary>The bound of the chain with its counts; far pairs are not looked at yet.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="counters">The counting rules.</param>
    /// <param name="candidates">For each slot the candidates to choose from; at least one.</param>
    /// <param name="cancel">Stops it.</param>
    public static DualBound OfChain(IChoicePrices prices, Counters counters, int[][] candidates, CancellationToken cancel = default) => new(
        counters,
        candidates,
        [.. candidates.Select((list, slot) => list.Select(c => (int)Math.Min(prices.Alone(slot)[c], PairTable.Never / 2)).ToArray())],
        [.. candidates.Select((list, slot) => slot == 0 ? null! : PairTable.Of(prices, slot - 1, candidates[slot - 1], slot, list, cancel))],
        []);

    /// <summary>The same with further pairs of slots, to which nothing has been lent yet.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="fartherThan">Pairs as far apart as this, counted in slots, are in already; 1 for those of the chain.</param>
    /// <param name="upTo">Pairs farther apart than this stay out.</param>
    /// <param name="cancel">Stops it.</param>
    public DualBound WithPairs(IChoicePrices prices, int fartherThan, int upTo, CancellationToken cancel = default) => new(_counters, _candidates, _own, _withBefore, [
        .. _pairs,
        .. Enumerable.Range(0, _candidates.Length).SelectMany(
            first => prices.Linked(first).Where(second => second > first + fartherThan && second <= first + (long)upTo),
            (first, second) => new LentPair(
                first, _candidates[first], second, _candidates[second], PairTable.Of(prices, first, _candidates[first], second, _candidates[second], cancel))),
    ]);

    /// <summary>Goes over all slots, there and back; the bound does not fall.</summary>
    /// <param name="enough">What a candidate costs more than this is not worth lending.</param>
    public void Sweep(long enough)
    {
        for (var slot = 0; slot < _candidates.Length; slot++)
        {
            Visit(slot, _toEarlier[slot], _toLater[slot], enough);
        }

        for (var slot = _candidates.Length - 1; slot >= 0; slot--)
        {
            _chain.FromEnd(slot);
            Visit(slot, _toLater[slot], _toEarlier[slot], enough);
        }
    }

    /// <summary>
    /// The bound over the candidates with which a choice can still be cheaper than a price; null where there are none left in
    /// some slot, so that no choice is cheaper.
    /// </summary>
    public DualBound? Below(long price)
    {
        int[][] kept = [.. _through.Select(costs => Enumerable.Range(0, costs.Length).Where(c => costs[c] < price).ToArray())];
        return kept.Any(k => k.Length == 0) ? null
            : kept.Zip(_candidates).All(k => k.First.Length == k.Second.Length) ? this
            : Keeping(kept);
    }

    /// <summary>A bound of its own in which a slot has one candidate alone.</summary>
    public DualBound Fixed(int slot, int place) =>
        Keeping([.. _candidates.Select((list, s) => s == slot ? [place] : Enumerable.Range(0, list.Length).ToArray())]);

    /// <summary>The places of a slot, those with the cheapest way through them first.</summary>
    public int[] CheapestFirst(int slot) => [.. Enumerable.Range(0, _through[slot].Length).OrderBy(place => _through[slot][place])];

    /// <summary>The cheapest choice by the prices as lent; null where none keeps the counts.</summary>
    public int[]? Suggestion() => _chain.Cheapest() is { } places ? [.. places.Select((place, slot) => _candidates[slot][place])] : null;

    private void Visit(int slot, LentPair[] giving, LentPair[] taking, long enough)
    {
        foreach (var pair in giving)
        {
            pair.GiveBack(slot, _own[slot]);
        }

        _chain.FromStart(slot);
        var through = _chain.Through(slot);
        _through[slot] = through;
        var least = through.Min();
        Bound = least;
        for (var place = 0; place < through.Length && taking.Length > 0; place++)
        {
            var each = (int)((Math.Min(through[place], enough) - least) / (KeptBack * taking.Length));
            if (each > 0)
            {
                Lend(slot, place, each, taking);
            }
        }
    }

    private void Lend(int slot, int place, int each, LentPair[] taking)
    {
        foreach (var pair in taking)
        {
            pair.Lend(slot, place, each);
        }

        _own[slot][place] -= each * taking.Length;
        _chain.Lower(slot, place, each * taking.Length);
    }

    private DualBound Keeping(int[][] kept) => new(
        _counters,
        [.. kept.Select((places, slot) => Picked(_candidates[slot], places))],
        [.. kept.Select((places, slot) => Picked(_own[slot], places))],
        [.. kept.Select((places, slot) => slot == 0 ? null! : _withBefore[slot].Keeping(kept[slot - 1], places))],
        [.. _pairs.Select(pair => pair.Keeping(kept[pair.First], kept[pair.Second]))]);

    private static int[] Picked(int[] values, int[] places) => Array.ConvertAll(places, place => values[place]);
}
