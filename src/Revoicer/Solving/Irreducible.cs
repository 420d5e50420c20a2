namespace Revoicer.Solving;

/// <summary>Finds, of things that are impossible together, some of which none can be left out.</summary>
internal static class Irreducible
{
    /// <summary>
    /// Leaves out what is not needed, in halves first and one at a time last, until each of those left has been left out alone
    /// and the rest was possible.
    /// </summary>
    /// <param name="all">Things that are impossible together.</param>
    /// <param name="isImpossible">Whether some of them are.</param>
    public static List<T> Of<T>(IReadOnlyList<T> all, Func<IReadOnlyList<T>, bool> isImpossible)
    {
        var left = all.ToList();
        for (var size = left.Count / 2; size > 1; size /= 2)
        {
            LeaveOut(left, size, isImpossible);
        }

        // What could be spared only once something else was gone is found the next time round.
        while (LeaveOut(left, 1, isImpossible))
        {
        }

        return left;
    }

    private static bool LeaveOut<T>(List<T> left, int size, Func<IReadOnlyList<T>, bool> isImpossible)
    {
        var before = left.Count;
        for (var end = left.Count; end > 0; end -= size)
        {
            var start = Math.Max(0, end - size);
            if (isImpossible([.. left[..start], .. left[end..]]))
            {
                left.RemoveRange(start, end - start);
            }
        }

        return left.Count < before;
    }
}
