using Revoicer.Text;

namespace Revoicer.LeadSheets.ChordGrid;

/// <summary>Cuts a line of bars into its pieces.</summary>
internal static class GridLine
{
    // Longest first. The signs are those of printed music as the ABC standard 2.1 types them.
    private static readonly (string Sign, bool Closes, bool Opens)[] BarLines =
    [
        (":||:", true, true),
        (":|:", true, true),
        (":||", true, false),
        (":|]", true, false),
        ("||:", false, true),
        ("::", true, true),
        (":|", true, false),
        ("|:", false, true),
        ("||", false, false),
        ("|]", false, false),
        ("|", false, false),
    ];

    /// <summary>The pieces in order.</summary>
    /// <param name="text">The line without its comment.</param>
    /// <param name="line">Where the line stands.</param>
    public static IEnumerable<GridPiece> Pieces(string text, Place line)
    {
        var at = 0;
        while (at < text.Length)
        {
            if (char.IsWhiteSpace(text[at]))
            {
                at++;
                continue;
            }

            var piece = PieceAt(text, at, line);
            at += piece.Where.Length;
            yield return piece;
        }
    }

    /// <summary>
    /// The line up to its comment. A '#' begins one at the start or after a blank, so that F# survives; inside brackets
    /// it is a sharp: "C7(b9, #11)".
    /// </summary>
    public static string WithoutComment(string line)
    {
        var closed = -1;
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '(' && i > closed)
            {
                closed = ClosingBracket(line, i);
            }

            if (line[i] == '#' && i > closed && (i == 0 || char.IsWhiteSpace(line[i - 1])))
            {
                return line[..i];
            }
        }

        return line;
    }

    private static GridPiece PieceAt(string text, int at, Place line)
    {
        foreach (var (sign, closes, opens) in BarLines)
        {
            if (string.CompareOrdinal(text, at, sign, 0, sign.Length) == 0)
            {
                return new GridPiece.BarLine(line.Part(at, sign.Length), closes, opens, sign != "|");
            }
        }

        var digits = text[at] == '[' ? text.AsSpan(at + 1).IndexOfAnyExceptInRange('0', '9') : 0;
        digits = digits < 0 ? text.Length - at - 1 : digits;
        if (digits > 0)
        {
            return new GridPiece.Ending(line.Part(at, 1 + digits), text.Substring(at + 1, digits));
        }

        var end = EndOfEntry(text, at);
        return new GridPiece.Entry(line.Part(at, end - at), text[at..end]);
    }

    // Blanks inside brackets belong to the symbol: "C7(b9, #11)".
    private static int EndOfEntry(string text, int at)
    {
        var end = at + 1;
        var closed = text[at] == '(' ? ClosingBracket(text, at) : at;
        while (end < text.Length && (end <= closed || !EndsEntry(text[end])))
        {
            if (text[end] == '(' && end > closed)
            {
                closed = ClosingBracket(text, end);
            }

            end++;
        }

        return end;
    }

    private static bool EndsEntry(char c) => char.IsWhiteSpace(c) || c is '|' or ':' or '[';

    // The bracket's end within the bar; its own place where there is none.
    private static int ClosingBracket(string text, int open)
    {
        var close = text.AsSpan(open).IndexOfAny(')', '|');
        return close >= 0 && text[open + close] == ')' ? open + close : open;
    }
}
