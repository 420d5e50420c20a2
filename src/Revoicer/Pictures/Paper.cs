using Revoicer.Values;
using ScottPlot;
using ScottPlot.AxisPanels;
using ScottPlot.TickGenerators;

namespace Revoicer.Pictures;

/// <summary>
/// A sheet with two axes to draw on. Its margins are fixed, so that where lines and marks lie depends on the data alone
/// and not on how wide a machine's fonts run.
/// </summary>
internal sealed class Paper : IDisposable
{
    // 640 units on 16 cm of paper: 4 units a millimetre, letters of 13 units 9 points high.
    private const int Width = 640;
    private const float LetterSize = 13;
    private const float TitleSize = 14;
    private const float PngScale = 3;

    public static readonly Color Ink = Colors.Black;
    public static readonly Color Pale = Color.FromHex("#D9D9D9");

    private readonly Plot _plot = new();
    private readonly string _family;
    private readonly int _height;

    /// <param name="family">The font.</param>
    /// <param name="height">How high the whole sheet is, in its units.</param>
    /// <param name="margins">What is left for the axes, in the same units.</param>
    /// <param name="x">What the horizontal axis goes from and to.</param>
    /// <param name="y">What the vertical axis goes from and to.</param>
    public Paper(string family, int height, PixelPadding margins, CoordinateRange x, CoordinateRange y)
    {
        _family = family;
        _height = height;
        XUnit = x.Length / (Width - margins.Left - margins.Right);
        YUnit = y.Length / (height - margins.Top - margins.Bottom);
        _plot.Layout.Fixed(margins);
        _plot.Axes.SetLimits(x.Min, x.Max, y.Min, y.Max);
        _plot.Axes.SetLimitsX(x.Min, x.Max, _plot.Axes.Top);
        _plot.Grid.IsVisible = false;
        _plot.Axes.Top.TickGenerator = new NumericManual();
        _plot.Axes.Right.TickGenerator = new NumericManual();
        _plot.FigureBackground.Color = Colors.White;
        _plot.DataBackground.Color = Colors.White;
    }

    /// <summary>How much of the horizontal axis one unit of the sheet is.</summary>
    public double XUnit { get; }

    /// <summary>How much of the vertical axis one unit of the sheet is.</summary>
    public double YUnit { get; }

    public AxisBase Bottom => (AxisBase)_plot.Axes.Bottom;

    public AxisBase Top => (AxisBase)_plot.Axes.Top;

    public AxisBase Left => (AxisBase)_plot.Axes.Left;

    /// <summary>Gives an axis its title and its marks.</summary>
    public void Scale(AxisBase axis, string title, IEnumerable<Tick> ticks)
    {
        axis.TickGenerator = new NumericManual([.. ticks]);
        axis.TickLabelStyle.FontName = _family;
        axis.TickLabelStyle.FontSize = LetterSize;
        axis.LabelStyle.Text = title;
        axis.LabelStyle.FontName = _family;
        axis.LabelStyle.FontSize = TitleSize;
        axis.LabelStyle.Bold = false;

        // The library sets the title of a top axis further off than that of a bottom one, and what is written beside a
        // mark of a left axis a little too high.
        if (axis.Edge == Edge.Top)
        {
            axis.PaddingBetweenTickAndAxisLabels = new PixelPadding(0);
        }
        else if (axis.Edge == Edge.Left)
        {
            axis.TickLabelStyle.OffsetY = 2;
        }
    }

    /// <summary>Takes the frame away, for a sheet on which several pictures stand below each other.</summary>
    public void WithoutFrame() => _plot.Axes.Frame(false);

    /// <summary>A line from corner to corner.</summary>
    /// <param name="corners">Its corners, at least two.</param>
    /// <param name="width">Its width in units of the sheet.</param>
    /// <param name="color">Its shade.</param>
    /// <param name="dashes">Lengths of dash, gap, dash, gap... in units of the sheet; none for an unbroken line.</param>
    public void Line(IReadOnlyList<Coordinates> corners, float width, Color color, params IReadOnlyList<double> dashes)
    {
        var line = _plot.Add.ScatterLine(DashedLine.Cut(corners, XUnit, YUnit, dashes).ToArray(), color);
        line.LineWidth = width;
    }

    public void Box(double left, double right, double bottom, double top, Color fill, float border)
    {
        var box = _plot.Add.Rectangle(left, right, bottom, top);
        box.FillColor = fill;
        box.LineColor = Ink;
        box.LineWidth = border;
    }

    /// <summary>A mark with a black edge; what it lies on does not show through.</summary>
    public void Mark(Coordinates at, MarkerShape shape, float size, Color fill)
    {
        var mark = _plot.Add.Marker(at, shape, size, fill);
        mark.MarkerFillColor = fill;
        mark.MarkerLineColor = Ink;
        mark.MarkerLineWidth = 1.5f;
        mark.MarkerStyle.OutlineColor = Ink;
        mark.MarkerStyle.OutlineWidth = 1.5f;
    }

    public ScottPlot.Plottables.Text Words(string words, Coordinates at, Alignment alignment)
    {
        var text = _plot.Add.Text(words, at);
        text.LabelFontName = _family;
        text.LabelFontSize = LetterSize;
        text.LabelFontColor = Ink;
        text.LabelAlignment = alignment;
        return text;
    }

    public Picture Picture()
    {
        var svg = SvgText.Tidy(_plot.GetSvgXml(Width, _height));
        _plot.ScaleFactor = PngScale;
        var png = _plot.GetImageBytes((int)(Width * PngScale), (int)(_height * PngScale), ImageFormat.Png);
        return new Picture(svg.ToItems(), png.ToItems());
    }

    public void Dispose() => _plot.Dispose();
}
