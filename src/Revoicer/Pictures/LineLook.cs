using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>How one of several lines looks: told apart by dashes and by marks, so that neither colour nor shade is needed.</summary>
/// <param name="Dashes">Lengths of dash, gap, dash, gap... in units of the sheet; none for an unbroken line.</param>
/// <param name="Shape">The shape of its marks.</param>
/// <param name="Fill">What they are filled with.</param>
internal sealed record LineLook(IReadOnlyList<double> Dashes, MarkerShape Shape, Color Fill)
{
    /// <summary>The looks there are; more lines than these cannot be told apart.</summary>
    public static IReadOnlyList<LineLook> All { get; } =
    [
        new([], MarkerShape.FilledCircle, Paper.Ink),
        new([8, 4], MarkerShape.FilledSquare, Colors.White),
        new([3, 3], MarkerShape.FilledTriangleUp, Colors.White),
        new([10, 3, 2, 3], MarkerShape.FilledDiamond, Paper.Ink),
        new([16, 4], MarkerShape.FilledCircle, Colors.White),
    ];
}
