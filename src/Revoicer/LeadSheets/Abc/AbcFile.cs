using System.Globalization;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>A tune of a file: its lines from "X:" to the next empty line.</summary>
/// <param name="Number">The number behind "X:"; null where there is none.</param>
/// <param name="Lines">Its lines, the one with "X:" first.</param>
internal sealed record AbcTune(int? Number, IReadOnlyList<AbcLine> Lines);

/// <summary>Takes an ABC file apart into its tunes.</summary>
/// <param name="Head">Lines before the first tune, which hold for all tunes.</param>
/// <param name="Tunes">The tunes in order.</param>
internal sealed record AbcFile(IReadOnlyList<AbcLine> Head, IReadOnlyList<AbcTune> Tunes)
{
    // The longest line of the hymns at hand has some 200 characters.
    private const int MostCharactersInLine = 4_000;

    public static AbcFile Read(string fileName, string text, Remarks remarks)
    {
        var head = new List<AbcLine>();
        var tunes = new List<AbcTune>();
        List<AbcLine>? open = head;
        foreach (var line in WithoutTextBlocks(Lines(fileName, text, remarks), remarks))
        {
            if (line.Text.Length == 0)
            {
                open = null;
            }
            else if (line.Field == 'X')
            {
                open = [line];
                tunes.Add(new AbcTune(NumberOf(line, remarks), open));
            }
            else if (open is not null)
            {
                open.Add(line);
            }
            else if (tunes.Count > 0 && !line.IsDirective)
            {
                remarks.WarnOnce(line.Where, "text after an empty line, which ends a tune, is passed over", "'X:' at the head of another tune");
            }
        }

        return new AbcFile(head, tunes);
    }

    private static int? NumberOf(AbcLine line, Remarks remarks)
    {
        if (int.TryParse(line.Value.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        var found = line.Value.Text.Length == 0 ? "a tune without a number" : $"'{Quoted.Text(line.Value.Text)}' is no number of a tune";
        remarks.Warn(line.Where, found, "a whole number behind 'X:'");
        return null;
    }

    // Comments go; an empty line stays as one without text, because it ends a tune.
    private static IEnumerable<AbcLine> Lines(string fileName, string text, Remarks remarks)
    {
        var lines = text.TrimStart('\uFEFF').Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
        foreach (var (i, line) in lines.Index())
        {
            var shown = new string([.. line.Take(MostCharactersInLine).Select(c => c == '\t' || Quoted.IsVisible(c) ? c : '?')]);
            var place = new Place(fileName, i + 1, 1, Math.Max(1, shown.Length), shown);
            if (line.Length > MostCharactersInLine)
            {
                remarks.Refuse(place.Part(0, 1), $"a line of {line.Length} characters", $"at most {MostCharactersInLine}");
            }
            else if (line.StartsWith("%%", StringComparison.Ordinal))
            {
                yield return new AbcLine(line.TrimEnd(), place);
            }
            else if (!line.TrimStart().StartsWith('%'))
            {
                yield return new AbcLine(WithoutComment(line).TrimEnd(), place);
            }
        }
    }

    private static string WithoutComment(string line)
    {
        for (var at = line.IndexOf('%', StringComparison.Ordinal); at >= 0; at = line.IndexOf('%', at + 1))
        {
            if (line[at - 1] != '\\')
            {
                return line[..at];
            }
        }

        return line;
    }

    // What stands between "%%begintext" and "%%endtext" (or another such pair) is no music.
    private static IEnumerable<AbcLine> WithoutTextBlocks(IEnumerable<AbcLine> lines, Remarks remarks)
    {
        AbcLine? begin = null;
        foreach (var line in lines)
        {
            if (begin is null && BlockWord(line, "%%begin") is { })
            {
                begin = line;
            }
            else if (begin is null)
            {
                yield return line;
            }
            else if (BlockWord(line, "%%end") is { } ended && ended == BlockWord(begin, "%%begin"))
            {
                begin = null;
            }
        }

        if (begin is not null)
        {
            remarks.Refuse(begin.Where, $"'{Quoted.Text(begin.Text)}' without an end", "'%%end' with the same word below it");
        }
    }

    private static string? BlockWord(AbcLine line, string start) => line.Text.StartsWith(start, StringComparison.Ordinal)
        ? line.Text[start.Length..].Split([' ', '\t'], 2)[0]
        : null;
}
