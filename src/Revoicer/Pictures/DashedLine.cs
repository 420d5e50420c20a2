using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>
/// Cuts a line into dashes. The drawing library knows dashes too, but its SVG has none: it writes each as an outline and
/// complains on the standard error, where the program's own sentences belong.
/// </summary>
internal static class DashedLine
{
    /// <summary>The corners of the dashes in their order, a point that is not a number after each dash that ends.</summary>
    /// <param name="line">The corners of the line, at least one.</param>
    /// <param name="xUnit">How much of the horizontal axis one unit of the sheet is, positive.</param>
    /// <param name="yUnit">The same for the vertical axis.</param>
    /// <param name="lengths">Lengths of dash, gap, dash, gap... in units of the sheet, each positive; none for an unbroken line.</param>
    public static IEnumerable<Coordinates> Cut(
        IReadOnlyList<Coordinates> line, double xUnit, double yUnit, IReadOnlyList<double> lengths)
    {
        var place = 0;
        var left = lengths.Count == 0 ? double.PositiveInfinity : lengths[0];
        var at = line[0];
        yield return at;
        foreach (var corner in line.Skip(1))
        {
            var length = Length(at, corner, xUnit, yUnit);
            while (length > left)
            {
                at = Between(at, corner, left / length);
                length -= left;
                yield return at;
                if (place % 2 == 0)
                {
                    yield return Coordinates.NaN;
                }

                place = (place + 1) % lengths.Count;
                left = lengths[place];
            }

            at = corner;
            left -= length;
            if (place % 2 == 0)
            {
                yield return at;
            }
        }
    }

    private static double Length(Coordinates from, Coordinates to, double xUnit, double yUnit) =>
        Math.Sqrt(Math.Pow((to.X - from.X) / xUnit, 2) + Math.Pow((to.Y - from.Y) / yUnit, 2));

    private static Coordinates Between(Coordinates from, Coordinates to, double part) =>
        new(from.X + (part * (to.X - from.X)), from.Y + (part * (to.Y - from.Y)));
}
