namespace Revoicer.Values;

/// <summary>Looks up places in what is in order.</summary>
public static class Sorted
{
    /// <summary>The place of the last element that is not above a value; -1 where all are.</summary>
    /// <param name="ordered">Elements in ascending order; equal ones may follow each other.</param>
    /// <param name="value">The value.</param>
    public static int LastUpTo<T>(IReadOnlyList<T> ordered, T value)
        where T : IComparable<T> => LastUpTo(ordered, value, element => element);

    /// <summary>The same, by something of each element.</summary>
    public static int LastUpTo<TElement, TKey>(IReadOnlyList<TElement> ordered, TKey value, Func<TElement, TKey> key)
        where TKey : IComparable<TKey>
    {
        var (low, high) = (0, ordered.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = key(ordered[middle]).CompareTo(value) <= 0 ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }
}
