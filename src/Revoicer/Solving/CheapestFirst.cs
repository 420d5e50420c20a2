namespace Revoicer.Solving;

/// <summary>Sorts numbered things by price, equals by number: the order in which ties are broken everywhere.</summary>
internal static class CheapestFirst
{
    // Price and number share one long while sorting; a price stays below 2^42 thousandths, four thousand million clash
    // units, a number below 2^20.
    private const int NumberBits = 20;

    /// <summary>The numbers, cheapest first.</summary>
    /// <param name="prices">The price of each number; below 2^42.</param>
    /// <param name="numbers">The numbers to sort; below 2^20.</param>
    public static int[] Sort(ReadOnlySpan<long> prices, IEnumerable<int> numbers)
    {
        var keys = new List<long>();
        foreach (var number in numbers)
        {
            keys.Add((prices[number] << NumberBits) | (uint)number);
        }

        keys.Sort();
        return [.. keys.Select(key => (int)(key & ((1 << NumberBits) - 1)))];
    }
}
