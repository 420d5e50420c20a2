using System.Globalization;
using Revoicer.Values;
using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>Draws price and clash in several keys, two bars a key, panels below each other.</summary>
internal static class KeyChartDrawing
{
    private static readonly PixelPadding Margins = new(78, 14, 40, 8);

    // In units of the sheet: what stands over the panels, the height of a panel's bars, the room above them for marks and the
    // panel's name, and that below them for the names of the keys.
    private const double Head = 50;
    private const double BarsHeight = 150;
    private const double RoomAbove = 40;
    private const double RoomBelow = 44;

    private const int MostSteps = 6;

    // Bars in shares of the width of a key.
    private const double Broad = 0.36;

    public static Picture Draw(KeyChart chart, string family)
    {
        const double pitch = RoomAbove + BarsHeight + RoomBelow;
        var height = Head + (chart.Panels.Count * pitch);
        var keys = chart.Panels.Max(p => p.Keys.Count);
        using var paper = new Paper(
            family, (int)(height + Margins.Top + Margins.Bottom), Margins, new CoordinateRange(0, keys), new CoordinateRange(0, height));
        paper.WithoutFrame();
        DrawLegend(paper, height);
        var ticks = new List<Tick>();
        foreach (var (place, panel) in chart.Panels.Index())
        {
            var foot = height - Head - (place * pitch) - RoomAbove - BarsHeight;
            var scale = Scale.For(panel.Keys.Max(k => Math.Max(k.Price ?? 0, k.Clash ?? 0)), MostSteps);
            ticks.AddRange(MarkLevels(paper, keys, foot, scale));
            Draw(paper, panel, foot, BarsHeight / scale.Top);
            paper.Words(panel.Name, new(0, foot + BarsHeight + RoomAbove - 4), Alignment.UpperLeft);
        }

        paper.Scale(paper.Left, "Price and clash dose (clash units)", ticks);
        paper.Scale(paper.Bottom, "Key read: keynote, and semitones from the written key", []);
        return paper.Picture();
    }

    private static IEnumerable<Tick> MarkLevels(Paper paper, int keys, double foot, Scale scale)
    {
        foreach (var level in scale.Levels)
        {
            var y = foot + (level * BarsHeight / scale.Top);
            paper.Line([new(0, y), new(keys, y)], 1, level == 0 ? Paper.Ink : Paper.Pale);
            yield return Tick.Major(y, level.ToString(CultureInfo.InvariantCulture));
        }
    }

    private static void Draw(Paper paper, KeyPanel panel, double foot, double unit)
    {
        foreach (var (place, key) in panel.Keys.Index())
        {
            var middle = place + 0.5;
            if (key is { Price: { } price, Clash: { } clash })
            {
                paper.Box(middle - Broad, middle, foot, foot + (price * unit), Colors.White, 1.5f);
                paper.Box(middle, middle + Broad, foot, foot + (clash * unit), Paper.Ink, 1.5f);
                Mark(paper, key, new(middle, foot + (Math.Max(price, clash) * unit)));
            }
            else
            {
                Cross(paper, new(middle, foot + 16));
            }

            paper.Words($"{(key.Tonic is { } tonic ? tonic + "\n" : "")}{key.Signed}", new(middle, foot - 6), Alignment.UpperCenter);
        }
    }

    private static void Mark(Paper paper, KeyBar key, Coordinates top)
    {
        var y = top.Y + 9;
        if (key.IsRecommended)
        {
            paper.Mark(new(top.X, y), MarkerShape.FilledTriangleDown, 12, Paper.Ink);
            y += 14;
        }

        if (!key.HasAllBasses)
        {
            paper.Mark(new(top.X, y), MarkerShape.FilledCircle, 8, Colors.White);
        }
    }

    private static void Cross(Paper paper, Coordinates at)
    {
        var (x, y) = (6 * paper.XUnit, 6 * paper.YUnit);
        paper.Line([new(at.X - x, at.Y - y), new(at.X + x, at.Y + y)], 2, Paper.Ink);
        paper.Line([new(at.X - x, at.Y + y), new(at.X + x, at.Y - y)], 2, Paper.Ink);
    }

    // Two rows: what the bars are, what the marks are.
    private static void DrawLegend(Paper paper, double top)
    {
        Coordinates At(double right, double down) => new(right * paper.XUnit, top - down);
        void Box(double right, Color fill) => paper.Box(At(right, 0).X, At(right + 12, 0).X, top - 16, top - 4, fill, 1.5f);
        void Say(string words, double right, double down) => paper.Words(words, At(right, down), Alignment.MiddleLeft).LabelOffsetY = 2;
        Box(2, Colors.White);
        Say("price of all, the tune's own included", 20, 10);
        Box(302, Paper.Ink);
        Say("clash dose, the tune's own left out", 320, 10);
        paper.Mark(At(8, 32), MarkerShape.FilledTriangleDown, 12, Paper.Ink);
        Say("recommended", 20, 32);
        paper.Mark(At(150, 32), MarkerShape.FilledCircle, 8, Colors.White);
        Say("not every bass has a pedal", 162, 32);
        Cross(paper, At(378, 32));
        Say("no draft", 390, 32);
    }
}
