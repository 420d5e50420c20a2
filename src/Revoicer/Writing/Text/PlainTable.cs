using System.Text;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>A table in plain text: columns as wide as they need, two blanks between them, lines as long as it takes.</summary>
public static class PlainTable
{
    /// <summary>A column.</summary>
    /// <param name="Heading">Its heading, one line or more.</param>
    /// <param name="IsNumber">Whether its cells end at one edge, as numbers do.</param>
    /// <param name="Cells">Its cells, from the first row on; as many in every column.</param>
    public sealed record Column(Items<string> Heading, bool IsNumber, Items<string> Cells);

    /// <summary>The lines, each ending in \n, without blanks at their ends.</summary>
    public static string Of(IReadOnlyList<Column> columns)
    {
        var heading = columns.Max(c => c.Heading.Count);
        var text = new StringBuilder();
        for (var row = -heading; row < columns[0].Cells.Count; row++)
        {
            text.Append(string.Join("  ", columns.Select(c => Cell(c, row))).TrimEnd()).Append('\n');
        }

        return text.ToString();
    }

    // Headings stand on the rows before the first; the last line of each is next to it.
    private static string Cell(Column column, int row)
    {
        var width = column.Heading.Concat(column.Cells).Max(cell => cell.Length);
        var cell = row >= 0 ? column.Cells[row] : (column.Heading.Count + row is >= 0 and var line ? column.Heading[line] : "");
        return column.IsNumber ? cell.PadLeft(width) : cell.PadRight(width);
    }
}
