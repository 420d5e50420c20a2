using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>Some slots in a row by themselves, numbered from 0; what they cost with others is left out.</summary>
/// <param name="whole">The prices of all slots.</param>
/// <param name="from">The first slot of the window.</param>
/// <param name="count">How many slots it has.</param>
internal sealed class PriceWindow(IChoicePrices whole, int from, int count) : IChoicePrices
{
    private readonly int[][] _linked =
        [.. Enumerable.Range(from, count).Select(slot => whole.Linked(slot).Where(o => o >= from && o < from + count).Select(o => o - from).ToArray())];

    /// <inheritdoc/>
    public int Count => count;

    /// <inheritdoc/>
    public ReadOnlySpan<long> Alone(int slot) => whole.Alone(from + slot);

    /// <inheritdoc/>
    public IReadOnlyList<int> Linked(int slot) => _linked[slot];

    /// <inheritdoc/>
    public void PairPrices(int slot, int candidate, int other, ReadOnlySpan<int> candidates, Span<long> prices) =>
        whole.PairPrices(from + slot, candidate, from + other, candidates, prices);
}
