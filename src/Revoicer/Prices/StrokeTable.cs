using System.Numerics;

namespace Revoicer.Prices;

/// <summary>
/// Prices between the kinds of stroke of two slots (or of one with itself), in thousandths: row = kind of the later slot,
/// column = kind of the earlier one.
/// </summary>
internal sealed class StrokeTable
{
    private readonly int[] _prices;
    private readonly int _rows;
    private readonly int _columns;

    // The same turned about, so that both ways rows can be added as they lie; empty where it is not worth its room.
    private readonly int[] _turned;

    private StrokeTable(int[] prices, int rows, int columns, bool isOftenRead)
    {
        _prices = prices;
        _rows = rows;
        _columns = columns;
        _turned = isOftenRead ? Turned(prices, rows, columns) : [];
    }

    /// <summary>
    /// The table of two slots: roughness at every distance at which they are heard, hurry of limbs, and what cannot follow.
    /// </summary>
    /// <param name="instrument">The tower.</param>
    /// <param name="earlier">The kinds of the slot heard first.</param>
    /// <param name="later">The kinds of the other.</param>
    /// <param name="apart">Microseconds from a hearing of the first to a hearing of the other, for each pair of hearings.</param>
    /// <param name="withMoves">Whether hurry and forbidden moves are in it, or roughness alone.</param>
    /// <param name="isOftenRead">Whether it is worth twice the room to read it quickly both ways.</param>
    public static StrokeTable Between(
        Instrument instrument, StrokeKinds earlier, StrokeKinds later, IEnumerable<long> apart, bool withMoves = true, bool isOftenRead = false)
    {
        var prices = new int[earlier.Count * later.Count];
        foreach (var distance in apart)
        {
            instrument.AddRoughness(earlier, later, distance, prices);
            if (withMoves)
            {
                instrument.AddMoves(earlier, later, distance, prices);
            }
        }

        return new StrokeTable(prices, later.Count, earlier.Count, isOftenRead);
    }

    /// <summary>The price of a candidate's strokes with another's.</summary>
    public long Sum(ReadOnlySpan<int> earlier, ReadOnlySpan<int> later)
    {
        var sum = 0L;
        foreach (var row in later)
        {
            var prices = _prices.AsSpan(row * _columns, _columns);
            foreach (var column in earlier)
            {
                sum += prices[column];
            }
        }

        return sum;
    }

    /// <summary>The price of a candidate's strokes among themselves, each pair once.</summary>
    public int SumOfPairs(ReadOnlySpan<int> kinds)
    {
        var sum = 0;
        for (var a = 1; a < kinds.Length; a++)
        {
            for (var b = 0; b < a; b++)
            {
                sum += _prices[(kinds[a] * _columns) + kinds[b]];
            }
        }

        return sum;
    }

    /// <summary>For each kind of the earlier slot its price with a candidate of the later.</summary>
    public void Columns(ReadOnlySpan<int> later, Span<int> columns)
    {
        columns[.._columns].Clear();
        foreach (var row in later)
        {
            Add(_prices.AsSpan(row * _columns, _columns), columns);
        }
    }

    /// <summary>For each kind of the later slot its price with a candidate of the earlier.</summary>
    public void Rows(ReadOnlySpan<int> earlier, Span<int> rows)
    {
        if (_turned.Length > 0)
        {
            rows[.._rows].Clear();
            foreach (var column in earlier)
            {
                Add(_turned.AsSpan(column * _rows, _rows), rows);
            }

            return;
        }

        for (var row = 0; row < _rows; row++)
        {
            var prices = _prices.AsSpan(row * _columns, _columns);
            var sum = 0;
            foreach (var column in earlier)
            {
                sum += prices[column];
            }

            rows[row] = sum;
        }
    }

    private static int[] Turned(int[] prices, int rows, int columns)
    {
        var turned = new int[prices.Length];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                turned[(column * rows) + row] = prices[(row * columns) + column];
            }
        }

        return turned;
    }

    private static void Add(ReadOnlySpan<int> prices, Span<int> sums)
    {
        var wide = prices.Length - (prices.Length % Vector<int>.Count);
        for (var i = 0; i < wide; i += Vector<int>.Count)
        {
            (new Vector<int>(prices[i..]) + new Vector<int>(sums[i..])).CopyTo(sums[i..]);
        }

        for (var i = wide; i < prices.Length; i++)
        {
            sums[i] += prices[i];
        }
    }
}
