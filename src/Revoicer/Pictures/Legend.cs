using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>Says over a picture which line is which: a piece of each, and its name, in rows.</summary>
internal static class Legend
{
    /// <summary>The height of a row in units of the sheet.</summary>
    public const int RowHeight = 20;

    // Names up to so many letters stand three in a row, longer ones have a row each; units of the sheet.
    private const int ShortName = 18;
    private const int InRow = 3;
    private const double Column = 186;
    private const double Sample = 34;
    private const int LongestName = 60;

    /// <summary>How many rows some names take.</summary>
    public static int Rows(IReadOnlyList<string> names) => (names.Count + PerRow(names) - 1) / PerRow(names);

    /// <summary>Draws the rows.</summary>
    /// <param name="paper">The sheet, on which a unit of the vertical axis is one of the sheet.</param>
    /// <param name="names">The names, no more than there are looks.</param>
    /// <param name="left">Where the rows begin on the horizontal axis.</param>
    /// <param name="top">Where the first row's upper edge lies on the vertical axis.</param>
    public static void Draw(Paper paper, IReadOnlyList<string> names, double left, double top)
    {
        for (var i = 0; i < names.Count; i++)
        {
            var (look, x) = (LineLook.All[i], left + (i % PerRow(names) * Column * paper.XUnit));
            var y = top - (((i / PerRow(names)) + 0.5) * RowHeight * paper.YUnit);
            paper.Line([new(x, y), new(x + (Sample * paper.XUnit), y)], 1.8f, Paper.Ink, look.Dashes);
            paper.Mark(new(x + (Sample / 2 * paper.XUnit), y), look.Shape, 8, look.Fill);
            var words = paper.Words(Short(names[i]), new(x + (Sample * paper.XUnit), y), Alignment.MiddleLeft);
            words.LabelOffsetX = 6;
            words.LabelOffsetY = 2;
        }
    }

    private static int PerRow(IReadOnlyList<string> names) => names.All(n => n.Length <= ShortName) ? InRow : 1;

    private static string Short(string name) => name.Length <= LongestName ? name : name[..(LongestName - 3)] + "...";
}
