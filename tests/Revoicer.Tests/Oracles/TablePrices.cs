using Revoicer.Prices;

namespace Revoicer.Tests.Oracles;

/// <summary>Prices in plain arrays.</summary>
/// <param name="alone">For each slot the price of each candidate by itself.</param>
/// <param name="pairs">For each pair of linked slots, the earlier first, the price of each pair of candidates.</param>
internal sealed class TablePrices(long[][] alone, IReadOnlyDictionary<(int Earlier, int Later), long[,]> pairs) : IChoicePrices
{
    public int Count => alone.Length;

    public ReadOnlySpan<long> Alone(int slot) => alone[slot];

    public IReadOnlyList<int> Linked(int slot) =>
        [.. Enumerable.Range(0, Count).Where(other => pairs.ContainsKey((Math.Min(slot, other), Math.Max(slot, other))))];

    public void PairPrices(int slot, int candidate, int other, ReadOnlySpan<int> candidates, Span<long> prices)
    {
        var table = pairs[(Math.Min(slot, other), Math.Max(slot, other))];
        for (var i = 0; i < candidates.Length; i++)
        {
            prices[i] = slot < other ? table[candidate, candidates[i]] : table[candidates[i], candidate];
        }
    }

    /// <summary>The price of a choice, added up from the arrays alone.</summary>
    public long Price(int[] choice) =>
        choice.Select((candidate, slot) => alone[slot][candidate]).Sum()
        + pairs.Sum(p => p.Value[choice[p.Key.Earlier], choice[p.Key.Later]]);

    /// <summary>The same prices, only pairs of neighbours left.</summary>
    public TablePrices NeighboursOnly() => new(alone, pairs.Where(p => p.Key.Later - p.Key.Earlier == 1).ToDictionary());

    /// <summary>A copy of any prices for some candidates of each slot, numbered anew in their order.</summary>
    public static TablePrices Copy(IChoicePrices prices, int[][] candidates)
    {
        var pairs = new Dictionary<(int, int), long[,]>();
        for (var slot = 0; slot < prices.Count; slot++)
        {
            foreach (var other in prices.Linked(slot).Where(o => o > slot))
            {
                pairs[(slot, other)] = Pairs(prices, slot, candidates[slot], other, candidates[other]);
            }
        }

        return new TablePrices(
            [.. candidates.Select((numbers, slot) => numbers.Select(c => prices.Alone(slot)[c]).ToArray())],
            pairs);
    }

    private static long[,] Pairs(IChoicePrices prices, int slot, int[] candidates, int other, int[] others)
    {
        var table = new long[candidates.Length, others.Length];
        var row = new long[others.Length];
        for (var i = 0; i < candidates.Length; i++)
        {
            prices.PairPrices(slot, candidates[i], other, others, row);
            for (var j = 0; j < row.Length; j++)
            {
                table[i, j] = row[j];
            }
        }

        return table;
    }
}
