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

    // After this many partners the next one's cost alone, which is less than the truth, is taken for the rest. On the demos
    // this makes the bound a third quicker and at most a hundredth lower.
    private const int MostPartners = 128;

    // How many of the cheapest candidates of a slot are tried as better partners.
    private const int Witnesses = 8;


    private readonly IChoicePrices _prices;
    private readonly int[][] _allowed;
    private readonly long[][] _least;

    private NeighbourBound(IChoicePrices prices, int[][] allowed, CancellationToken cancel)
    {
        _prices = prices;
        _allowed = allowed;
        var (forward, backward) = (Array.Empty<long[]>(), Array.Empty<long[]>());
        Parallel.Invoke(new ParallelOptions { CancellationToken = cancel }, () => forward = Sweep(1, cancel), () => backward = Sweep(-1, cancel));
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

        // Every slot has a bound of its own, as sweeps from both ends leave out different partners.
        Bound = allowed.Select((candidates, slot) => candidates.Min(c => _least[slot][c])).Max();
    }

    /// <summary>No choice costs less than this.</summary>
    public long Bound { get; }

    /// <summary>Works it out over the allowed candidates of each slot.</summary>
    public static NeighbourBound Of(IChoicePrices prices, int[][] allowed, CancellationToken cancel = default) => new(prices, allowed, cancel);

    /// <summary>What a choice costs at the least if it has this candidate.</summary>
    public long Least(int slot, int candidate) => _least[slot][candidate];

    // The least cost of all slots up to each candidate, itself included, coming from one end.
    private long[][] Sweep(int direction, CancellationToken cancel)
    {
        var count = _prices.Count;
        var cost = new long[count][];
        var first = direction > 0 ? 0 : count - 1;
        for (var slot = first; slot >= 0 && slot < count; slot += direction)
        {
            cancel.ThrowIfCancellationRequested();
            cost[slot] = _prices.Alone(slot).ToArray();
            if (slot != first)
            {
                var before = new Partners(slot - direction, cost[slot - direction], _allowed[slot - direction]);
                AddBest(slot, before, slot + direction, cost[slot]);
            }
        }

        return cost;
    }

    // Candidates that cost so much alone that another, already worked out, is a better partner for whatever comes next get
    // the cheapest partner's cost: no more than the truth, and it never matters.
    private void AddBest(int slot, Partners before, int next, long[] cost)
    {
        var linked = _prices.Linked(slot).Contains(before.Slot);
        var isEnd = next < 0 || next >= _prices.Count;
        var enough = long.MaxValue;
        var order = CheapestFirst.Sort(_prices.Alone(slot), _allowed[slot]);
        for (var i = 0; i < order.Length; i++)
        {
            var candidate = order[i];
            if (!linked || cost[candidate] + before.Least >= enough)
            {
                cost[candidate] += before.Least;
                continue;
            }

            cost[candidate] += Best(slot, candidate, before);
            if (i < Witnesses && !isEnd)
            {
                enough = Math.Min(enough, cost[candidate] + DearestPair(slot, candidate, next));
            }
        }
    }

    private long DearestPair(int slot, int candidate, int next)
    {
        if (!_prices.Linked(slot).Contains(next))
        {
            return 0;
        }

        var pairs = new long[_allowed[next].Length];
        _prices.PairPrices(slot, candidate, next, _allowed[next], pairs);
        return pairs.Max();
    }

    // Partners come cheapest first, so the search ends where they alone cost as much as the best pair found.
    private long Best(int slot, int candidate, Partners before)
    {
        Span<long> pairs = stackalloc long[Portion];
        var best = long.MaxValue;
        for (var start = 0; start < before.Order.Length && before.Cost[before.Order[start]] < best; start += Portion)
        {
            if (start >= MostPartners)
            {
                return before.Cost[before.Order[start]];
            }

            var portion = before.Order.AsSpan(start, Math.Min(Portion, before.Order.Length - start));
            _prices.PairPrices(slot, candidate, before.Slot, portion, pairs);
            for (var i = 0; i < portion.Length; i++)
            {
                best = Math.Min(best, before.Cost[portion[i]] + pairs[i]);
            }
        }

        return best;
    }

    private sealed class Partners(int slot, long[] cost, int[] allowed)
    {
        public int Slot => slot;

        public long[] Cost => cost;

        public int[] Order { get; } = CheapestFirst.Sort(cost, allowed);

        public long Least => cost[Order[0]];
    }
}
