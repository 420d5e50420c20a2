using System.Globalization;
using Revoicer.Music;
using Revoicer.Values;
using ScottPlot;

namespace Revoicer.Pictures;

/// <summary>Draws a chord under several settings, strips below each other over one axis of frequency.</summary>
internal static class ChordStripsDrawing
{
    private static readonly PixelPadding Margins = new(8, 14, 34, 8);

    // In units of the sheet: the line of words, the row of a bell, the two rows of keys, and the room for their names.
    private const double Line = 18;
    private const double BellRow = 26;
    private const double Natural = 14;
    private const double Sharp = 10;
    private const double KeyNames = 20;
    private const double Between = 14;
    private const double Edge = 6;

    // The room left of the lowest partial for the names of the bells, half of that for a frequency, and the semitones beyond
    // the outermost partials.
    private const double NameRoom = 122;
    private const double HalfNumber = 32;
    private const double Aside = 1.5;

    public static Picture Draw(ChordStrips strips, string family)
    {
        var height = Edge + Line + strips.Strips.Sum(HeightOf);
        var x = Range(strips);
        using var paper = new Paper(family, (int)(height + Margins.Top + Margins.Bottom), Margins, x, new CoordinateRange(0, height));
        paper.WithoutFrame();
        var top = height - Edge;
        paper.Words(strips.Place, new(x.Min, top), Alignment.UpperLeft);
        top -= Line;
        foreach (var strip in strips.Strips)
        {
            Draw(paper, strip, x, top);
            top -= HeightOf(strip);
        }

        paper.Scale(paper.Left, "", []);
        paper.Scale(paper.Bottom, "Keys as written, struck ones filled; above them partials by frequency", []);
        return paper.Picture();
    }

    private static double HeightOf(ChordStrip strip) =>
        (2 * Line) + (strip.Bells.Count * BellRow) + Natural + Sharp + KeyNames + (strip.Links.Count * Line) + Between;

    // All keys and all partials of the bells, and the names at their left.
    private static CoordinateRange Range(ChordStrips strips)
    {
        double[] places =
        [
            .. strips.Strips.SelectMany(s => s.Keyboard).Select(k => (double)k.Note.Midi),
            .. strips.Strips.SelectMany(s => s.Bells).SelectMany(b => b.Partials),
        ];
        var (min, max) = (places.Min() - Aside, places.Max() + Aside);
        var room = 640 - Margins.Left - Margins.Right;
        return new CoordinateRange(min - (NameRoom * (max - min) / (room - NameRoom)), max);
    }

    private static void Draw(Paper paper, ChordStrip strip, CoordinateRange x, double top)
    {
        paper.Words(Short(strip.Title), new(x.Min, top), Alignment.UpperLeft);
        var keys = top - (2 * Line) - (strip.Bells.Count * BellRow) - Sharp - Natural;
        if (strip.Bells.Count > 0)
        {
            MarkFrequencies(paper, strip, x.Max, top - Line, keys + Natural + Sharp);
        }

        DrawKeys(paper, strip.Keyboard, keys);
        var rows = strip.Bells.Index().ToDictionary(b => b.Item.Note, b => keys + Natural + Sharp + ((b.Index + 0.5) * BellRow));
        foreach (var bell in strip.Bells)
        {
            DrawBell(paper, bell, x, rows[bell.Note]);
        }

        var numbers = new List<Coordinates>();
        foreach (var (place, link) in strip.Links.Index())
        {
            DrawLink(paper, link, place + 1, rows, keys + Natural + Sharp, numbers);
            paper.Words(
                string.Create(CultureInfo.InvariantCulture, $"{place + 1}: {link.Words}, {100 * link.Share:0} % of the clash"),
                new(x.Min, keys - KeyNames - (place * Line)),
                Alignment.UpperLeft);
        }
    }

    // The sharps are the upper row, as on the keyboard; keys without a bell are not there.
    private static void DrawKeys(Paper paper, Items<StripKey> keys, double foot)
    {
        foreach (var key in keys.Where(k => k.HasBell))
        {
            var low = foot + (key.Note.IsSharp ? Natural : 0);
            paper.Box(key.Note.Midi - 0.5, key.Note.Midi + 0.5, low, low + (key.Note.IsSharp ? Sharp : Natural), key.IsStruck ? Paper.Ink : Colors.White, 1);
            if (key.Note.PitchClass.Value == 0)
            {
                paper.Words(key.Note.ToString(), new(key.Note.Midi, foot - 2), Alignment.UpperCenter);
            }
        }
    }

    private static void DrawBell(Paper paper, StripBell bell, CoordinateRange x, double y)
    {
        var name = paper.Words(bell.Name, new(x.Min, y), Alignment.MiddleLeft);
        name.LabelOffsetY = 2;
        paper.Line([new(bell.Partials[0], y), new(bell.Partials[^1], y)], 1, Paper.Ink, bell.IsStruck ? [] : [2, 4]);
        foreach (var partial in bell.Partials)
        {
            paper.Line([new(partial, y - 4), new(partial, y + 4)], 1.5f, Paper.Ink);
        }
    }

    // Two partials are joined; one that contradicts the chord is joined to the key below it.
    private static void DrawLink(Paper paper, StripLink link, int number, Dictionary<WrittenNote, double> rows, double keys, List<Coordinates> numbers)
    {
        Coordinates from = new(link.From.Place, rows[link.From.Bell]);
        Coordinates to = link.To is { } end ? new(end.Place, rows[end.Bell]) : new(link.From.Place, keys);
        paper.Line([from, to], 2, Paper.Ink, link.To is null ? [2, 3] : []);
        paper.Mark(from, MarkerShape.FilledCircle, 8, Paper.Ink);
        if (link.To is not null)
        {
            paper.Mark(to, MarkerShape.FilledCircle, 8, Paper.Ink);
        }

        var at = NumberOf(paper, from.Y > to.Y ? from : to, from.Y > to.Y ? to : from, numbers);
        numbers.Add(at);
        paper.Words(number.ToString(CultureInfo.InvariantCulture), at, Alignment.MiddleCenter).LabelOffsetY = 2;
    }

    // Half a row below the upper end or above the lower one, on the side to which the line leans, so that of two that part from
    // one partial each has its own; where no other number stands. Above the line where it is too short for that.
    private static Coordinates NumberOf(Paper paper, Coordinates upper, Coordinates lower, List<Coordinates> taken)
    {
        const double half = BellRow / 2;
        var isShort = upper.Y - lower.Y < BellRow;
        var lean = isShort ? 0 : (lower.X - upper.X) * half / (upper.Y - lower.Y);
        var side = isShort || lower.X < upper.X ? -1 : 1;
        Coordinates[] ends = isShort
            ? [upper with { Y = upper.Y + half }]
            : [new(upper.X + lean, upper.Y - half), new(lower.X - lean, lower.Y + half)];
        var places =
            from end in ends
            from aside in new[] { 10 * side, -10 * side, 22 * side, -22 * side }
            select end with { X = end.X + (aside * paper.XUnit) };
        return places
            .Where(p => !taken.Any(t => Math.Abs(t.X - p.X) < 11 * paper.XUnit && Math.Abs(t.Y - p.Y) < half))
            .Append(upper)
            .First();
    }

    // Their numbers stand over the rows.
    private static void MarkFrequencies(Paper paper, ChordStrip strip, double right, double top, double foot)
    {
        var lowest = strip.Bells.Min(b => b.Partials[0]) - Aside;
        var highest = Math.Min(strip.Bells.Max(b => b.Partials[^1]), right - (HalfNumber * paper.XUnit));
        foreach (var mark in strip.Frequencies.Where(f => f.Place >= lowest && f.Place <= highest))
        {
            paper.Line([new(mark.Place, top - Line), new(mark.Place, foot)], 1, Paper.Pale);
            paper.Words(mark.Frequency.ToString(), new(mark.Place, top), Alignment.UpperCenter);
        }
    }

    private static string Short(string title) => title.Length <= 76 ? title : title[..73] + "...";
}
