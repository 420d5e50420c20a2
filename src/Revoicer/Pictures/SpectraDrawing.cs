using System.Globalization;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;
using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>Draws two spectra back to back: the lower bell's sticks stand on a line, the higher bell's hang from it.</summary>
internal static class SpectraDrawing
{
    private const int Height = 640;
    private static readonly PixelPadding Margins = new(66, 14, 58, 60);

    // The level of the line between the spectra, and room beyond 0 dB for the names and, above, for the quarrel (dB).
    private const double Floor = -40;
    private const double RoomAbove = 35;
    private const double RoomBelow = 25;

    // What is left of a partial is drawn for this long after the stroke.
    private static readonly Seconds Later = new(1);

    // How far apart names must stand, and how broad what is left of a partial is drawn, in units of the sheet.
    private const double NameDistance = 15;
    private const double BarWidth = 6;

    // Frequencies to write on the axis (Hz): the middles of third-octave bands (ISO 266), named as there.
    private static readonly double[] Marked =
        [25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 12500, 16000];

    public static Picture Draw(TwoSpectra spectra, string family)
    {
        var all = spectra.Lower.Sticks.Concat(spectra.Upper.Sticks).Select(s => X(s.Frequency)).ToArray();
        var x = new CoordinateRange(all.Min() - 0.07, all.Max() + 0.05);
        var y = new CoordinateRange(Floor - RoomBelow, RoomAbove - Floor);
        using var paper = new Paper(family, Height, Margins, x, y);
        MarkFrequencies(paper, x);
        MarkLevels(paper, x);
        DrawQuarrel(paper, spectra.Worst, y);
        paper.Line([new(x.Min, 0), new(x.Max, 0)], 1, Paper.Ink);
        DrawBell(paper, spectra.Lower, new Side(1, Paper.Ink, []));
        DrawBell(paper, spectra.Upper, new Side(-1, Colors.White, [4, 3]));
        DrawKey(paper, spectra.Lower, 1, $"bell {spectra.Lower.StrikeNote}: filled\nbar: left after {Later.Value:0} s\nseconds: T60");
        DrawKey(paper, spectra.Upper, -1, $"bell {spectra.Upper.StrikeNote}: hollow");
        return paper.Picture();
    }

    private static double X(Hertz frequency) => Math.Log10(frequency.Value);

    private static void MarkFrequencies(Paper paper, CoordinateRange x)
    {
        var hertz = Marked.Where(f => x.Contains(Math.Log10(f)));
        paper.Scale(
            paper.Bottom,
            "Frequency (Hz), logarithmic",
            hertz.Select(f => Tick.Major(Math.Log10(f), f.ToString(CultureInfo.InvariantCulture))));
        var notes = Enumerable.Range(0, 128).Select(StrikeNote.AtMidi).Where(n => x.Contains(X(Tuning.Concert.Of(n))));
        paper.Scale(paper.Top, "Note at that frequency (A4 = 440 Hz)", notes.Select(NoteTick));
    }

    private static Tick NoteTick(StrikeNote note)
    {
        var at = X(Tuning.Concert.Of(note));
        return note.PitchClass.Value is 0 or 4 or 7 ? Tick.Major(at, note.ToString()) : Tick.Minor(at);
    }

    private static void MarkLevels(Paper paper, CoordinateRange x)
    {
        var ticks = new List<Tick> { Tick.Major(0, $"{Floor:0}") };
        for (var level = Floor + 10; level <= 0; level += 10)
        {
            foreach (var y in new[] { level - Floor, Floor - level })
            {
                paper.Line([new(x.Min, y), new(x.Max, y)], 1, Paper.Pale);
                ticks.Add(Tick.Major(y, $"{level:0}"));
            }
        }

        paper.Scale(paper.Left, "Level at the stroke (dB re the loudest partial)", ticks);
    }

    // A band over both spectra, from the one partial to the other.
    private static void DrawQuarrel(Paper paper, RoughPartials? worst, CoordinateRange y)
    {
        if (worst is null)
        {
            return;
        }

        var (from, to) = (X(worst.Lower.Frequency), X(worst.Upper.Frequency));
        var apart = worst.Upper.Frequency.Value - worst.Lower.Frequency.Value;
        var top = y.Max - (40 * paper.YUnit);
        paper.Box(from, to, y.Min, top, Paper.Pale, 0);
        paper.Words(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{worst.Lower.Name} of {worst.LowerBell.StrikeNote} against {worst.Upper.Name} of {worst.UpperBell.StrikeNote},\n{apart:0} Hz apart: {100 * worst.Share:0} % of the roughness"),
            new((from + to) / 2, top),
            Alignment.LowerCenter);
    }

    private static void DrawBell(Paper paper, BellSpectrum bell, Side side)
    {
        var moved = NamesMoved(paper, bell.Sticks);
        for (var i = 0; i < bell.Sticks.Count; i++)
        {
            var stick = bell.Sticks[i];
            var at = X(stick.Frequency);
            var tip = new Coordinates(at, side.Y(stick.Level));
            var half = BarWidth / 2 * paper.XUnit;
            paper.Line([new(at, 0), tip], 1.5f, Paper.Ink, side.Dashes);
            paper.Box(at - half, at + half, 0, side.Y(stick.LevelAfter(Later)), side.Fill, 1.5f);
            paper.Mark(tip, MarkerShape.FilledCircle, 8, side.Fill);
            var words = paper.Words(Name(stick), tip, side.Sign > 0 ? Alignment.MiddleLeft : Alignment.MiddleRight);
            words.LabelRotation = -90;
            words.LabelOffsetX = (float)moved[i] + 2;
            words.LabelOffsetY = -side.Sign * 9;
        }
    }

    private static string Name(PartialStick stick) =>
        $"{stick.Partial} {stick.Decay.Value.ToString(stick.Decay.Value < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture)} s";

    // Names of partials that lie closely side by side give way to both sides.
    private static double[] NamesMoved(Paper paper, Items<PartialStick> sticks)
    {
        var moved = new double[sticks.Count];
        for (var i = 1; i < sticks.Count; i++)
        {
            var apart = (X(sticks[i].Frequency) - X(sticks[i - 1].Frequency)) / paper.XUnit;
            var missing = Math.Max(0, NameDistance - apart);
            moved[i - 1] -= missing / 2;
            moved[i] += missing / 2;
        }

        return moved;
    }

    // Between a bell's hum and its prime there is an octave of room.
    private static void DrawKey(Paper paper, BellSpectrum bell, int sign, string words)
    {
        var key = paper.Words(words, new(X(bell.Sticks[0].Frequency), sign * (-10 - Floor)), Alignment.MiddleLeft);
        key.LabelOffsetX = 12;
    }

    // One of the two spectra: whether it stands (1) or hangs (-1), and how it looks.
    private readonly record struct Side(int Sign, Color Fill, double[] Dashes)
    {
        public double Y(Decibels level) => Sign * Math.Max(0, level.Value - Floor);
    }
}
