using System.Globalization;
using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>Draws clash against carry: carry to the right, clash upward on a logarithmic scale, so that equal shares are equal steps.</summary>
internal static class TradeOffDrawing
{
    private const int Height = 420;
    private static readonly PixelPadding Margins = new(82, 14, 54, 12);

    // Less than this counts as this, as a logarithm has no 0; in clash units.
    private const double LeastShown = 1;

    // Room around the marks, as shares of what they span.
    private const double RoomAtSides = 0.08;
    private const double RoomBelow = 0.1;
    private const double RoomAbove = 0.16;

    // The size of a letter, in units of the sheet, and the least that the axes span, in dB and decades.
    private const int LongestName = 30;
    private const double LetterWidth = 9;
    private const double LetterHeight = 15;
    private const int MostMoves = 30;
    private const double LeastDecibels = 1;
    private const double LeastDecades = 0.3;

    public static Picture Draw(TradeOffChart chart, string family)
    {
        TradeOffMark[] all = [.. chart.Points, .. chart.AsItStands is { } other ? [other] : Array.Empty<TradeOffMark>()];
        var x = Around(all.Select(m => m.Carry.Value), LeastDecibels, RoomAtSides, RoomAtSides);
        var y = Around(all.Select(Y), LeastDecades, RoomBelow, RoomAbove);
        using var paper = new Paper(family, Height, Margins, x, y);
        MarkCarry(paper, x, y);
        MarkClash(paper, x, y);
        if (chart.AsItStands is { } own)
        {
            // Under the marks of the sample, which it may lie close to.
            paper.Mark(At(own), MarkerShape.FilledDiamond, 14, Colors.White);
        }

        paper.Line([.. chart.Points.Select(At).Append(At(chart.Points[^1]))], 1, Paper.Ink, 2, 4);
        foreach (var point in chart.Points)
        {
            paper.Mark(At(point), MarkerShape.FilledCircle, 8, Paper.Ink);
        }

        Number(paper, chart, y);
        // Carry and clash rise together, so nothing lies in the upper left.
        var key = paper.Words(
            $"numbers: as in the table; each the cheapest draft\nwhose chords carry at least so far (a sample)"
                + (chart.AsItStands is { } sound ? $"\nhollow: {Short(sound.Name)} as it is" : "")
                + (chart.HasTune ? "\nwhat the tune clashes with itself is counted in" : ""),
            new(x.Min, y.Max),
            Alignment.UpperLeft);
        key.LabelBackgroundColor = Colors.White;
        key.LabelOffsetX = 10;
        key.LabelOffsetY = 8;
        return paper.Picture();
    }

    private static string Short(string name) => name.Length <= LongestName ? name : name[..(LongestName - 3)] + "...";

    private static double Y(TradeOffMark mark) => Math.Log10(Math.Max(LeastShown, mark.Clash));

    private static Coordinates At(TradeOffMark mark) => new(mark.Carry.Value, Y(mark));

    private static CoordinateRange Around(IEnumerable<double> values, double least, double below, double above)
    {
        var (min, max) = (values.Min(), values.Max());
        var span = Math.Max(least, max - min);
        var middle = (min + max) / 2;
        return new CoordinateRange(middle - (span * (0.5 + below)), middle + (span * (0.5 + above)));
    }

    private static void MarkCarry(Paper paper, CoordinateRange x, CoordinateRange y)
    {
        var step = x.Length > 14 ? 5 : x.Length > 3 ? 1 : 0.5;
        var levels = Enumerable.Range((int)Math.Ceiling(x.Min / step), (int)(Math.Floor(x.Max / step) - Math.Ceiling(x.Min / step)) + 1).Select(i => i * step).ToArray();
        foreach (var level in levels)
        {
            paper.Line([new(level, y.Min), new(level, y.Max)], 1, Paper.Pale);
        }

        paper.Scale(paper.Bottom, "Carry of the chords on the mean (dB re one stroke of C4 as heard)", levels.Select(l => Tick.Major(l, l.ToString("0.#", CultureInfo.InvariantCulture))));
    }

    // 1, 2 and 5 in every decade; finer where less than a decade is seen.
    private static void MarkClash(Paper paper, CoordinateRange x, CoordinateRange y)
    {
        double[] inDecade = y.Length > 1.2 ? [1, 2, 5] : y.Length > 0.5 ? [1, 1.5, 2, 3, 4, 5, 7] : [.. Enumerable.Range(10, 90).Where(i => i % (i < 40 ? 2 : 5) == 0).Select(i => i / 10.0)];
        var levels = Enumerable.Range((int)Math.Floor(y.Min), (int)Math.Ceiling(y.Length) + 2)
            .SelectMany(power => inDecade.Select(times => times * Math.Pow(10, power)))
            .Where(level => y.Contains(Math.Log10(level)))
            .ToArray();
        foreach (var level in levels)
        {
            paper.Line([new(x.Min, Math.Log10(level)), new(x.Max, Math.Log10(level))], 1, Paper.Pale);
        }

        paper.Scale(
            paper.Left,
            "Clash dose (clash units), logarithmic",
            levels.Select(l => Tick.Major(Math.Log10(l), l.ToString("0.##", CultureInfo.InvariantCulture))));
    }

    // A number stands above its mark to the left, higher where it would run into another; where that leaves the sheet, below it
    // to the right, or lower.
    private static void Number(Paper paper, TradeOffChart chart, CoordinateRange y)
    {
        var taken = new List<(double Left, double Foot, double Width)>();
        foreach (var point in chart.Points)
        {
            var (x, height, width) = (point.Carry.Value / paper.XUnit, Y(point) / paper.YUnit, LetterWidth * point.Name.Length);
            var above = Enumerable.Range(0, MostMoves).Select(i => (Left: x - 5 - width, Foot: height + 4 + (i * 3), Width: width));
            var below = Enumerable.Range(0, MostMoves).Select(i => (Left: x + 6, Foot: height - 4 - LetterHeight - (i * 3), Width: width));
            var place = above.Concat(below)
                .Where(p => p.Foot + LetterHeight <= y.Max / paper.YUnit && p.Foot >= y.Min / paper.YUnit)
                .Where(p => !taken.Any(t => p.Left < t.Left + t.Width && t.Left < p.Left + width && Math.Abs(p.Foot - t.Foot) < LetterHeight))
                .Append((Left: x - 5 - width, Foot: height + 4, Width: width))
                .First();
            taken.Add(place);
            paper.Words(point.Name, new(place.Left * paper.XUnit, place.Foot * paper.YUnit), Alignment.LowerLeft);
        }
    }
}
