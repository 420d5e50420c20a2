using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>
/// What every candidate costs at the least in any choice: by itself and with the slots next to it, from both ends. Pairs
/// farther apart are left out, which can only make it less, as no pair price is negative; counting rules are left out
/// likewise. So the least of these is a true lower bound of the whole.
/// </summary>
internal sealed class NeighbourBound
{
    // Pair prices are asked for in portions, cheapest partners first, until no partner can be the best any more.
    private const int Portion = 32;

    private readonly IChoicePrices _prices;
    private readonly int[][] _allowed;
    private readonly long[][] _least;

    private NeighbourBound(IChoicePrices prices, int[][] allowed)
    {
        _prices = prices;
        _allowed = allowed;
        var (forward, backward) = (Array.Empty<long[]>(), Array.Empty<long[]>());
        Parallel.Invoke(() => forward = Sweep(1), () => backward = Sweep(-1));
        _least = new long[prices.Count][];
        for (var slot = 0; slot < prices.Count; slot++)
        {
            _least[slot] = new long[prices.Alone(slot).Length];
            Array.Fill(_least[slot], long.MaxValue);
            foreach (var candidate in allowed[slot])
            {
                _least[slot][candidate] = forward[slot][candidate] + backward[slot][candidate] - prices.Alone(slot)[candidate];
            }
        }

        Bound = allowed[0].Min(c => _least[0][c]);
    }

    /// <summary>No choice costs less than this.</summary>
    public long Bound { get; }

    /// <summary>Works it out over the allowed candidates of each slot.</summary>
    public static NeighbourBound Of(IChoicePrices prices, int[][] allowed) => new(prices, allowed);

    /// <summary>What a choice costs at the least if it has this candidate.</summary>
    public long Least(int slot, int candidate) => _least[slot][candidate];

    // The least cost of all slots up to each candidate, itself included, coming from one end.
    private long[][] Sweep(int direction)
    {
        var count = _prices.Count;
        var cost = new long[count][];
        var first = direction > 0 ? 0 : count - 1;
        for (var slot = first; slot >= 0 && slot < count; slot += direction)
        {
            cost[slot] = _prices.Alone(slot).ToArray();
            if (slot != first)
            {
                AddBest(slot, slot - direction, cost[slot - direction], cost[slot]);
            }
        }

        return cost;
    }

    private void AddBest(int slot, int before, long[] costBefore, long[] cost)
    {
        var partners = CheapestFirst.Sort(costBefore, _allowed[before]);
        if (!_prices.Linked(slot).Contains(before))
        {
            foreach (var candidate in _allowed[slot])
            {
                cost[candidate] += costBefore[partners[0]];
            }

            return;
        }

        Span<long> pairs = stackalloc long[Portion];
        foreach (var candidate in _allowed[slot])
        {
            var best = long.MaxValue;
            for (var start = 0; start < partners.Length && costBefore[partners[start]] < best; start += Portion)
            {
                var portion = partners.AsSpan(start, Math.Min(Portion, partners.Length - start));
                _prices.PairPrices(slot, candidate, before, portion, pairs);
                for (var i = 0; i < portion.Length; i++)
                {
                    best = Math.Min(best, costBefore[portion[i]] + pairs[i]);
                }
            }

            cost[candidate] += best;
        }
    }
}
