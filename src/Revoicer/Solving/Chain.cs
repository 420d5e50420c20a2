using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>
/// The slots in a row, each priced with the one before it: a dynamic programme that carries the counts of the rules along
/// finds the cheapest choice exactly. What is farther off enters as a fixed background price of each candidate.
/// </summary>
internal sealed class Chain
{
    private const long Never = long.MaxValue / 4;

    private readonly IChoicePrices _prices;
    private readonly Counters _counters;
    private readonly int[][] _candidates;
    private readonly long[][] _withBefore;

    /// <summary>Works out the prices of neighbours for some candidates of each slot.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="counters">The rules that count.</param>
    /// <param name="candidates">For each slot the candidates to choose from, in their order; at least one.</param>
    /// <param name="cancel">Stops the work.</param>
    public Chain(IChoicePrices prices, Counters counters, int[][] candidates, CancellationToken cancel = default)
    {
        _prices = prices;
        _counters = counters;
        _candidates = candidates;
        _withBefore = new long[prices.Count][];
        Parallel.For(1, Math.Max(1, prices.Count), new ParallelOptions { CancellationToken = cancel }, slot => _withBefore[slot] = WithBefore(slot));
    }

    /// <summary>The candidates of each slot that it chooses from.</summary>
    public IReadOnlyList<int[]> Candidates => _candidates;

    /// <summary>The price of the pair of the given places in the lists of a slot and the one before it.</summary>
    public long PairPrice(int slot, int place, int placeBefore) =>
        _withBefore[slot].Length == 0 ? 0 : _withBefore[slot][(place * _candidates[slot - 1].Length) + placeBefore];

    /// <summary>
    /// The cheapest choice that keeps the counts, by candidates alone, neighbours and background; null where none keeps
    /// them.
    /// </summary>
    /// <param name="background">For each slot a price for each of its candidates here; null for none.</param>
    /// <param name="cancel">Stops the work.</param>
    public int[]? Cheapest(long[][]? background, CancellationToken cancel = default)
    {
        var count = _prices.Count;
        var cost = new long[count][];
        var from = new int[count][];
        for (var slot = 0; slot < count; slot++)
        {
            cancel.ThrowIfCancellationRequested();
            (cost[slot], from[slot]) = Step(slot, slot == 0 ? null : cost[slot - 1], background?[slot]);
        }

        var end = IndexOfLeast(cost[^1]);
        if (cost[^1][end] >= Never)
        {
            return null;
        }

        var choice = new int[count];
        for (var slot = count - 1; slot >= 0; slot--)
        {
            choice[slot] = _candidates[slot][end % _candidates[slot].Length];
            end = from[slot][end];
        }

        return choice;
    }

    // A cell is state x candidates + place; its cost is the least of any way that ends there.
    private (long[] Cost, int[] From) Step(int slot, long[]? before, long[]? background)
    {
        var candidates = _candidates[slot];
        var cost = new long[_counters.States * candidates.Length];
        var from = new int[cost.Length];
        Array.Fill(cost, Never);
        var ways = before is null ? [new Ways(0, [0], [0])] : WaysInto(slot, before);
        for (var place = 0; place < candidates.Length; place++)
        {
            var alone = _prices.Alone(slot)[candidates[place]] + (background?[place] ?? 0);
            foreach (var way in ways)
            {
                var state = _counters.After(way.State, slot, candidates[place]);
                if (state < 0)
                {
                    continue;
                }

                var cell = (state * candidates.Length) + place;
                Extend(slot, place, way, before is null, alone, ref cost[cell], ref from[cell]);
            }
        }

        return (cost, from);
    }

    // Ways come cheapest first and no pair price is negative, so the search ends where they alone cost too much.
    private void Extend(int slot, int place, Ways way, bool isFirst, long alone, ref long cost, ref int from)
    {
        var width = isFirst ? 1 : _candidates[slot - 1].Length;
        for (var i = 0; i < way.Cells.Length && way.Costs[i] + alone < cost; i++)
        {
            var price = way.Costs[i] + alone + (isFirst ? 0 : PairPrice(slot, place, way.Cells[i] % width));
            if (price < cost)
            {
                cost = price;
                from = way.Cells[i];
            }
        }
    }

    // The cells of the slot before, those of one state together, cheapest first; where a phrase starts all states are one.
    private List<Ways> WaysInto(int slot, long[] before)
    {
        var width = _candidates[slot - 1].Length;
        var groups = _counters.StartsPhrase(slot)
            ? [(State: 0, Cells: Enumerable.Range(0, before.Length))]
            : Enumerable.Range(0, _counters.States).Select(s => (State: s, Cells: Enumerable.Range(s * width, width)));
        var ways = new List<Ways>();
        foreach (var (state, cells) in groups)
        {
            var sorted = CheapestFirst.Sort(before, cells.Where(cell => before[cell] < Never));
            if (sorted.Length > 0)
            {
                ways.Add(new Ways(state, sorted, Array.ConvertAll(sorted, cell => before[cell])));
            }
        }

        return ways;
    }

    private long[] WithBefore(int slot)
    {
        if (!_prices.Linked(slot).Contains(slot - 1))
        {
            return [];
        }

        var before = _candidates[slot - 1];
        var table = new long[_candidates[slot].Length * before.Length];
        for (var place = 0; place < _candidates[slot].Length; place++)
        {
            _prices.PairPrices(slot, _candidates[slot][place], slot - 1, before, table.AsSpan(place * before.Length, before.Length));
        }

        return table;
    }

    private static int IndexOfLeast(long[] costs) => Array.IndexOf(costs, costs.Min());

    private sealed record Ways(int State, int[] Cells, long[] Costs);
}
