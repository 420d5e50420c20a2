namespace Revoicer.Tests.Oracles;

/// <summary>Looks at every choice there is.</summary>
internal static class BruteForce
{
    /// <summary>Every choice of one of the allowed candidates for each slot.</summary>
    public static IEnumerable<int[]> Choices(IReadOnlyList<int[]> allowed)
    {
        var places = new int[allowed.Count];
        while (true)
        {
            yield return [.. places.Select((place, slot) => allowed[slot][place])];
            var turn = places.Length - 1;
            while (turn >= 0 && ++places[turn] == allowed[turn].Length)
            {
                places[turn--] = 0;
            }

            if (turn < 0)
            {
                yield break;
            }
        }
    }

    /// <summary>The least price of any choice that is kept; null where none is.</summary>
    public static long? Least(IReadOnlyList<int[]> allowed, Func<int[], bool> isKept, Func<int[], long> price) =>
        Choices(allowed).Where(isKept).Select(choice => (long?)price(choice)).Min();
}
