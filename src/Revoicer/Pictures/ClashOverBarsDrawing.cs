using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Values;
using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>Draws the clash over the bars, in rows below each other as music is written.</summary>
internal static class ClashOverBarsDrawing
{
    private static readonly PixelPadding Margins = new(64, 14, 36, 8);

    // So many bars find room in a row, so that the numbers of bars stand clear of each other.
    private const int MostInRow = 24;

    // In units of the sheet: the height of a row's curves, and what lies below them for the numbers of bars, more of it where
    // bars are heard again.
    private const double RowHeight = 150;
    private const double RowFoot = 30;
    private const double FootAgain = 16;

    // Room at both ends of a row, as a share of it, so that no mark is cut.
    private const double Aside = 0.008;

    // How far a number of a bar stands from the next at the least, and how many steps the scale has at most.
    private const double NumberWidth = 26;
    private const int MostSteps = 6;

    public static Picture Draw(ClashOverBars clash, string family)
    {
        var rows = (clash.Bars.Count + MostInRow - 1) / MostInRow;
        var inRow = (clash.Bars.Count + rows - 1) / rows;
        string[] names = [.. clash.Lines.Select(l => l.Name)];
        var legend = (Legend.Rows(names) * Legend.RowHeight) + 8;
        var pitch = RowHeight + RowFoot + (clash.Bars.Any(b => b.Pass > 1) ? FootAgain : 0);
        var height = legend + (rows * pitch);
        using var paper = new Paper(
            family, (int)(height + Margins.Top + Margins.Bottom), Margins, new CoordinateRange(-Aside * inRow, (1 + Aside) * inRow), new CoordinateRange(0, height));
        paper.WithoutFrame();
        Legend.Draw(paper, names, 0, height);
        var scale = Scale.For(clash.Lines.SelectMany(l => l.Chords).Max(c => (double?)c.Clash) ?? 0, MostSteps);
        var ticks = new List<Tick>();
        for (var row = 0; row < rows; row++)
        {
            var part = new Row(row * inRow, Math.Min(clash.Bars.Count, (row + 1) * inRow), height - legend - (row * pitch) - RowHeight, RowHeight / scale.Top);
            ticks.AddRange(MarkLevels(paper, part, scale));
            MarkBars(paper, clash.Bars, part);
            DrawLines(paper, clash.Lines, part);
        }

        paper.Scale(paper.Left, "Clash (C4 E4 G4 together = 100)", ticks);
        paper.Scale(paper.Bottom, $"Bar as written{(clash.Bars.Any(b => b.Pass > 1) ? ", and which time it is heard" : "")}{(clash.HasTune ? "; the tune's own clash left out" : "")}", []);
        return paper.Picture();
    }

    private static IEnumerable<Tick> MarkLevels(Paper paper, Row row, Scale scale)
    {
        foreach (var level in scale.Levels)
        {
            paper.Line([new(0, row.Y(level)), new(row.To - row.From, row.Y(level))], 1, level == 0 ? Paper.Ink : Paper.Pale);
            yield return Tick.Major(row.Y(level), level.ToString(CultureInfo.InvariantCulture));
        }
    }

    // A short line at every bar, its number where there is room, and where a passage is heard again, that it is.
    private static void MarkBars(Paper paper, Items<ArrangedBar> bars, Row row)
    {
        var every = (int)Math.Ceiling(NumberWidth * paper.XUnit);
        for (var i = row.From; i < row.To; i++)
        {
            var at = i - row.From;
            paper.Line([new(at, row.Foot), new(at, row.Foot - 5)], 1, Paper.Ink);
            var isAgain = bars[i].Pass > 1 && (i == row.From || bars[i - 1].Pass != bars[i].Pass);
            Say(bars[i].Number > 0 && (at % every == 0 || isAgain) ? bars[i].Number.ToString(CultureInfo.InvariantCulture) : "", 6);
            Say(isAgain ? Ordinal(bars[i].Pass) : "", 6 + FootAgain);

            void Say(string what, double down) => paper.Words(what, new(at, row.Foot - down), Alignment.UpperLeft).LabelOffsetX = -3;
        }

        paper.Line([new(row.To - row.From, row.Foot), new(row.To - row.From, row.Foot - 5)], 1, Paper.Ink);
    }

    // 1st, 2nd, 3rd, 4th.
    private static string Ordinal(int pass) => string.Create(
        CultureInfo.InvariantCulture,
        $"{pass}{((pass % 100) is >= 11 and <= 13 ? "th" : (pass % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" })}");

    private static void DrawLines(Paper paper, Items<ClashLine> lines, Row row)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            var look = LineLook.All[i];
            var chords = lines[i].Chords.Where(c => c.From >= row.From && c.From < row.To).ToArray();
            foreach (var run in Runs(chords))
            {
                var corners = run.SelectMany(c => new[] { row.At(c.From, c.Clash), row.At(c.To, c.Clash) });
                paper.Line([.. corners], 1.5f, Paper.Ink, look.Dashes);
            }

            foreach (var chord in chords)
            {
                paper.Mark(row.At((chord.From + Math.Min(chord.To, row.To)) / 2, chord.Clash), look.Shape, 7, look.Fill);
            }
        }
    }

    // Chords that follow each other; where none is named between two, the line breaks.
    private static IEnumerable<List<ClashOfChord>> Runs(IEnumerable<ClashOfChord> chords)
    {
        var run = new List<ClashOfChord>();
        foreach (var chord in chords)
        {
            if (run.Count > 0 && chord.From > run[^1].To + 1e-6)
            {
                yield return run;
                run = [];
            }

            run.Add(chord);
        }

        if (run.Count > 0)
        {
            yield return run;
        }
    }

    // One row: its bars, where its zero lies on the sheet, and how high a clash unit is.
    private readonly record struct Row(int From, int To, double Foot, double Unit)
    {
        public double Y(double clash) => Foot + (clash * Unit);

        public Coordinates At(double bar, double clash) => new(Math.Min(bar, To) - From, Y(clash));
    }
}
