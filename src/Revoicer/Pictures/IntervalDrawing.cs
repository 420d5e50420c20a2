using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>Draws the clash of intervals over the compass.</summary>
internal static class IntervalDrawing
{
    private const int Height = 460;
    private static readonly PixelPadding Margins = new(64, 14, 62, 12);

    // Room to the left of the lowest bell for the names of the lines, in semitones of the axis.
    private const double NameRoom = 7;

    // Room below 0, so that marks near it are not cut, in clash units.
    private const double FootRoom = 2;

    private const int MarkEvery = 3;
    private const double TickEvery = 10;

    public static Picture Draw(IntervalClashes clashes, string family)
    {
        var points = clashes.Lines.SelectMany(l => l.Points).ToArray();
        var x = new CoordinateRange(points.Min(p => p.Lower.Midi) - NameRoom, points.Max(p => p.Lower.Midi) + 1);
        var steps = Math.Max(1, (int)Math.Ceiling(points.Max(p => p.Clash) / TickEvery));
        using var paper = new Paper(family, Height, Margins, x, new(-FootRoom, steps * TickEvery));
        MarkAxes(paper, points, x, steps);
        for (var i = 0; i < clashes.Lines.Count; i++)
        {
            Draw(paper, clashes.Lines[i], i);
        }

        return paper.Picture();
    }

    private static void MarkAxes(Paper paper, IntervalPoint[] points, CoordinateRange x, int steps)
    {
        var levels = Enumerable.Range(0, steps + 1).Select(i => i * TickEvery).ToArray();
        foreach (var level in levels)
        {
            paper.Line([new(x.Min, level), new(x.Max, level)], 1, level == 0 ? Paper.Ink : Paper.Pale);
        }

        paper.Scale(paper.Left, "Clash of two bells (clash units: C4 E4 G4 = 100)", levels.Select(l => Tick.Major(l, $"{l:0}")));
        paper.Scale(
            paper.Bottom,
            "Strike note of the lower bell, and its frequency (Hz)",
            points.DistinctBy(p => p.Lower).Select(BellTick));
    }

    private static Tick BellTick(IntervalPoint point) => point.Lower.PitchClass.Value is 0 or 4 or 7
        ? Tick.Major(point.Lower.Midi, FormattableString.Invariant($"{point.Lower}\n{point.Frequency.Value:0}"))
        : Tick.Minor(point.Lower.Midi);

    private static void Draw(Paper paper, IntervalLine line, int place)
    {
        var look = LineLook.All[place % LineLook.All.Count];
        var points = line.Points.Select(p => new Coordinates(p.Lower.Midi, p.Clash)).ToArray();
        paper.Line(points, 1.8f, Paper.Ink, look.Dashes);
        foreach (var point in points.Where((_, i) => i % MarkEvery == 0 || i == points.Length - 1))
        {
            paper.Mark(point, look.Shape, 8, look.Fill);
        }

        var name = paper.Words(line.Name, points[0], Alignment.MiddleRight);
        name.LabelOffsetX = -8;
        name.LabelOffsetY = 2;
    }
}
