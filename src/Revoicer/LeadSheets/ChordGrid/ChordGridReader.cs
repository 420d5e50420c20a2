using System.Globalization;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.ChordGrid;

/// <summary>Reads the .chords form: a few "word: value" lines, then bars between '|' (docs/files.md).</summary>
public static class ChordGridReader
{
    // Bounds on what one file may ask for; a long hymn book has some thousand bars.
    private const int MostCharacters = 1 << 20;
    private const int MostCharactersInLine = 1_000;
    private const int MostBars = 20_000;

    /// <summary>Reads a chord grid.</summary>
    /// <param name="fileName">The file's name as messages give it; without its ending it is the title where there is none.</param>
    /// <param name="text">
    /// The file's text, at most 2^20 characters and 20,000 bars, repeats unfolded. Lines end with \n, \r\n or \r.
    /// </param>
    /// <returns>The sheet with warnings, or refused with all problems (the first hundred) in order of place.</returns>
    public static Reading<LeadSheet> Read(string fileName, string text)
    {
        if (text.Length > MostCharacters)
        {
            return Reading<LeadSheet>.No(Place.WholeFile(fileName), $"a file of {text.Length} characters", $"at most {MostCharacters}");
        }

        var problems = new List<Problem>();
        var head = new GridHead(problems);
        var cutter = new BarCutter(problems);
        ReadLines(fileName, text.TrimStart('\uFEFF'), head, cutter, problems);
        return Assemble(fileName, head, cutter.Bars, problems);
    }

    private static void ReadLines(string fileName, string text, GridHead head, BarCutter cutter, List<Problem> problems)
    {
        var lines = text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
        foreach (var (i, line) in lines.Index())
        {
            var shown = new string([.. line.Take(MostCharactersInLine).Select(c => c == '\t' || Quoted.IsVisible(c) ? c : '?')]);
            var place = new Place(fileName, i + 1, 1, shown.Length, shown);
            if (line.Length > MostCharactersInLine)
            {
                problems.Add(new Problem(place.Part(0, 1), $"a line of {line.Length} characters", $"at most {MostCharactersInLine}"));
            }
            else
            {
                ReadLine(GridLine.WithoutComment(line), place, head, cutter, problems);
            }

            if (cutter.Bars.Count > MostBars)
            {
                problems.Add(TooManyBars(place));
                return;
            }

            if (problems.Count > FirstProblems.Most)
            {
                return;
            }
        }

        cutter.Finish();
    }

    private static void ReadLine(string line, Place place, GridHead head, BarCutter cutter, List<Problem> problems)
    {
        if (string.IsNullOrWhiteSpace(line))
        {
            return;
        }

        var written = place.Part(line.Length - line.TrimStart().Length, line.Trim().Length);
        if (!GridHead.IsHeadLine(line))
        {
            if (line.Contains('|', StringComparison.Ordinal))
            {
                cutter.Take(GridLine.Pieces(line, place));
            }
            else
            {
                problems.Add(new Problem(written, "a line without a bar line", "bars between '|', or 'word: value' at the head"));
            }
        }
        else if (cutter.Bars.Count > 0)
        {
            problems.Add(new Problem(written, "a line of the head after the first bar", "it above the first bar; one time and key hold for the whole sheet"));
        }
        else
        {
            head.Take(line, place);
        }
    }

    private static Reading<LeadSheet> Assemble(string fileName, GridHead head, IReadOnlyList<RawBar> raw, List<Problem> problems)
    {
        var warnings = new List<Problem>();
        var meter = head.Meter;
        if (!head.NamesMeter)
        {
            meter = new Meter(4, 4);
            warnings.Add(new Problem(Place.WholeFile(fileName), "no time is given, 4/4 is taken", "'time: 4/4' at the head"));
        }

        var (key, tempo, pickup) = (head.Key, head.Tempo(meter), head.Pickup(meter));
        var order = RepeatOrder.Of(raw.Select(b => b.Marks), problems);
        if (raw.Count == 0 && problems.Count == 0)
        {
            problems.Add(new Problem(Place.WholeFile(fileName), "no bars", "bars between '|' after the head"));
        }
        else if (order.Count > MostBars && raw.Count <= MostBars)
        {
            problems.Add(TooManyBars(raw[^1].Where));
        }

        var bars = new BarReader(meter, pickup, problems, warnings).Read(raw);
        if (problems.Count > 0)
        {
            return new Reading<LeadSheet>.Refused(FirstProblems.Of(problems));
        }

        var title = head.Title ?? Path.GetFileNameWithoutExtension(fileName);
        var sheet = new LeadSheet(title, key, tempo, bars.ToItems(), RepeatOrder.Played(bars, order));
        return new Reading<LeadSheet>.Accepted(sheet, FirstProblems.Of(warnings));
    }

    private static Problem TooManyBars(Place where) => new(
        where,
        "more bars than one sheet may have",
        string.Create(CultureInfo.InvariantCulture, $"at most {MostBars}, repeats unfolded"));
}
