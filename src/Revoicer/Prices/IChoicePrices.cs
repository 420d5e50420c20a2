namespace Revoicer.Prices;

/// <summary>
/// What a search sees of a sheet: slots with numbered candidates, what each costs alone, and what two candidates of two
/// slots cost together. No pair price is negative. All in thousandths of a clash unit.
/// </summary>
public interface IChoicePrices
{
    /// <summary>How many slots there are.</summary>
    int Count { get; }

    /// <summary>What each candidate of a slot costs by itself.</summary>
    ReadOnlySpan<long> Alone(int slot);

    /// <summary>The slots with which a slot has pair prices, in rising order.</summary>
    IReadOnlyList<int> Linked(int slot);

    /// <summary>What a candidate of one slot costs with some candidates of another, which is linked with it.</summary>
    /// <param name="slot">The slot whose candidate is given.</param>
    /// <param name="candidate">That candidate.</param>
    /// <param name="other">The other slot.</param>
    /// <param name="candidates">Candidates of the other slot.</param>
    /// <param name="prices">Filled with one price for each of them.</param>
    void PairPrices(int slot, int candidate, int other, ReadOnlySpan<int> candidates, Span<long> prices);
}

/// <summary>Sums over a choice.</summary>
public static class ChoicePrices
{
    /// <summary>What two candidates cost together; 0 where the slots are not linked.</summary>
    public static long Pair(this IChoicePrices prices, int slot, int candidate, int other, int otherCandidate)
    {
        if (!prices.Linked(slot).Contains(other))
        {
            return 0;
        }

        Span<long> price = stackalloc long[1];
        prices.PairPrices(slot, candidate, other, [otherCandidate], price);
        return price[0];
    }

    /// <summary>The whole price of a choice: each candidate alone, and every pair once.</summary>
    public static long Whole(this IChoicePrices prices, IReadOnlyList<int> choice)
    {
        var sum = 0L;
        Span<long> price = stackalloc long[1];
        for (var slot = 0; slot < prices.Count; slot++)
        {
            sum += prices.Alone(slot)[choice[slot]];
            foreach (var other in prices.Linked(slot).Where(o => o > slot))
            {
                prices.PairPrices(slot, choice[slot], other, [choice[other]], price);
                sum += price[0];
            }
        }

        return sum;
    }

    /// <summary>What some candidates of a slot cost with all other slots as chosen: alone, and with each of the others.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="choice">For each slot the number of a candidate; the entry of the slot itself is not looked at.</param>
    /// <param name="slot">The slot.</param>
    /// <param name="candidates">Candidates of the slot.</param>
    public static long[] InPlace(this IChoicePrices prices, IReadOnlyList<int> choice, int slot, ReadOnlySpan<int> candidates)
    {
        var costs = new long[candidates.Length];
        for (var i = 0; i < costs.Length; i++)
        {
            costs[i] = prices.Alone(slot)[candidates[i]];
        }

        AddPairs(prices, choice, slot, candidates, costs, _ => true);
        return costs;
    }

    /// <summary>Adds to the costs of some candidates of a slot what they cost with certain other slots as chosen.</summary>
    internal static void AddPairs(
        this IChoicePrices prices, IReadOnlyList<int> choice, int slot, ReadOnlySpan<int> candidates, Span<long> costs, Func<int, bool> with)
    {
        var pairs = new long[candidates.Length];
        foreach (var other in prices.Linked(slot).Where(with))
        {
            prices.PairPrices(other, choice[other], slot, candidates, pairs);
            for (var i = 0; i < pairs.Length; i++)
            {
                costs[i] += pairs[i];
            }
        }
    }
}
