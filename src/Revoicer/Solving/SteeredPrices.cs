using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>Prices with a surcharge on the candidates that do not count for a rule that asks for a least.</summary>
internal sealed class SteeredPrices : IChoicePrices
{
    private readonly IChoicePrices _prices;
    private readonly long[][] _alone;

    /// <param name="prices">The true prices.</param>
    /// <param name="leasts">The rules.</param>
    /// <param name="surcharges">For each rule what a slot in its stretch costs more that does not count; not negative.</param>
    public SteeredPrices(IChoicePrices prices, IReadOnlyList<Least> leasts, long[] surcharges)
    {
        _prices = prices;
        _alone = [.. Enumerable.Range(0, prices.Count).Select(slot => prices.Alone(slot).ToArray())];
        for (var slot = 0; slot < _alone.Length; slot++)
        {
            for (var rule = 0; rule < leasts.Count; rule++)
            {
                for (var c = 0; leasts[rule].InStretch[slot] && c < _alone[slot].Length; c++)
                {
                    _alone[slot][c] += leasts[rule].Counts[slot][c] ? 0 : surcharges[rule];
                }
            }
        }
    }

    public int Count => _prices.Count;

    public ReadOnlySpan<long> Alone(int slot) => _alone[slot];

    public IReadOnlyList<int> Linked(int slot) => _prices.Linked(slot);

    public void PairPrices(int slot, int candidate, int other, ReadOnlySpan<int> candidates, Span<long> prices) =>
        _prices.PairPrices(slot, candidate, other, candidates, prices);
}
