using System.Numerics;
using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>What some candidates of one slot cost with some of another, laid out for taking minima: a row a candidate of the first.</summary>
internal sealed class PairTable
{
    /// <summary>More than any choice that could be wanted costs; sums of two do not overflow. What costs more is taken as this.</summary>
    public const int Never = int.MaxValue / 4;

    private readonly int[] _prices;
    private readonly int _rows;
    private readonly int _columns;

    private PairTable(int[] prices, int rows, int columns) => (_prices, _rows, _columns) = (prices, rows, columns);

    /// <summary>The prices of two slots; a table of nothing where they are not linked.</summary>
    public static PairTable Of(IChoicePrices prices, int first, int[] firstCandidates, int second, int[] secondCandidates, CancellationToken cancel)
    {
        var (rows, columns) = (firstCandidates.Length, secondCandidates.Length);
        var table = new int[rows * columns];
        if (prices.Linked(first).Contains(second))
        {
            Parallel.For(0, rows, new ParallelOptions { CancellationToken = cancel }, row =>
            {
                var line = new long[columns];
                prices.PairPrices(first, firstCandidates[row], second, secondCandidates, line);
                for (var column = 0; column < columns; column++)
                {
                    table[(row * columns) + column] = (int)Math.Min(line[column], Never / 2);
                }
            });
        }

        return new PairTable(table, rows, columns);
    }

    /// <summary>The price of a row with a column.</summary>
    public int this[int row, int column] => _prices[(row * _columns) + column];

    /// <summary>For each column the least of all rows, each with something added.</summary>
    public int[] LeastOfRows(int[] added)
    {
        var least = new int[_columns];
        Array.Fill(least, Never);
        for (var row = 0; row < _rows; row++)
        {
            if (added[row] < Never)
            {
                Lower(least, _prices.AsSpan(row * _columns, _columns), added[row]);
            }
        }

        return least;
    }

    /// <summary>For each row the least of all columns, each with something added.</summary>
    public int[] LeastOfColumns(int[] added)
    {
        var least = new int[_rows];
        for (var row = 0; row < _rows; row++)
        {
            least[row] = Least(_prices.AsSpan(row * _columns, _columns), added);
        }

        return least;
    }

    /// <summary>The table of some rows and columns.</summary>
    public PairTable Keeping(int[] rows, int[] columns)
    {
        if (rows.Length == _rows && columns.Length == _columns)
        {
            return this;
        }

        var kept = new int[rows.Length * columns.Length];
        var at = 0;
        foreach (var row in rows)
        {
            foreach (var column in columns)
            {
                kept[at++] = this[row, column];
            }
        }

        return new PairTable(kept, rows.Length, columns.Length);
    }

    private static void Lower(int[] least, ReadOnlySpan<int> prices, int added)
    {
        var wide = least.Length - (least.Length % Vector<int>.Count);
        var more = new Vector<int>(added);
        for (var i = 0; i < wide; i += Vector<int>.Count)
        {
            Vector.Min(new Vector<int>(least, i), new Vector<int>(prices[i..]) + more).CopyTo(least, i);
        }

        for (var i = wide; i < least.Length; i++)
        {
            least[i] = Math.Min(least[i], prices[i] + added);
        }
    }

    private static int Least(ReadOnlySpan<int> prices, int[] added)
    {
        var wide = added.Length - (added.Length % Vector<int>.Count);
        var lanes = new Vector<int>(Never);
        for (var i = 0; i < wide; i += Vector<int>.Count)
        {
            lanes = Vector.Min(lanes, new Vector<int>(prices[i..]) + new Vector<int>(added, i));
        }

        var least = Never;
        for (var lane = 0; lane < Vector<int>.Count; lane++)
        {
            least = Math.Min(least, lanes[lane]);
        }

        for (var i = wide; i < added.Length; i++)
        {
            least = Math.Min(least, prices[i] + added[i]);
        }

        return least;
    }
}
