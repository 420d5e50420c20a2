using System.Collections;
using System.Runtime.CompilerServices;

namespace Revoicer.Values;

/// <summary>
/// An immutable list that is equal to another when its elements are, in the same order.
/// Records hold it where an array would make equal records compare unequal.
/// </summary>
/// <typeparam name="T">The element.</typeparam>
[CollectionBuilder(typeof(Items), nameof(Items.Of))]
public sealed class Items<T> : IReadOnlyList<T>, IEquatable<Items<T>>
{
    private readonly T[] _elements;

    internal Items(T[] elements) => _elements = elements;

    /// <summary>The list without elements.</summary>
    public static Items<T> None { get; } = new([]);

    /// <summary>How many elements there are.</summary>
    public int Count => _elements.Length;

    /// <summary>The element at a place, counted from 0.</summary>
    /// <exception cref="IndexOutOfRangeException">The place is outside 0..Count-1.</exception>
    public T this[int index] => _elements[index];

    /// <summary>The elements as a span, for inner loops.</summary>
    public ReadOnlySpan<T> AsSpan() => _elements;

    /// <summary>Whether two lists have equal elements in the same order.</summary>
    public static bool operator ==(Items<T>? left, Items<T>? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two lists differ in an element, in order or in length.</summary>
    public static bool operator !=(Items<T>? left, Items<T>? right) => !(left == right);

    /// <inheritdoc/>
    public bool Equals(Items<T>? other) =>
        other is not null && (ReferenceEquals(this, other) || _elements.AsSpan().SequenceEqual(other._elements));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Items<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var element in _elements)
        {
            hash.Add(element);
        }

        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_elements).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The elements, separated by a comma, in brackets.</summary>
    public override string ToString() => $"[{string.Join(", ", _elements)}]";
}

/// <summary>Makes <see cref="Items{T}"/> lists.</summary>
public static class Items
{
    /// <summary>A list that holds a copy of the given elements.</summary>
    public static Items<T> Of<T>(ReadOnlySpan<T> elements) =>
        elements.IsEmpty ? Items<T>.None : new Items<T>(elements.ToArray());

    /// <summary>A list of what a sequence yields.</summary>
    public static Items<T> ToItems<T>(this IEnumerable<T> sequence) => new([.. sequence]);
}
