using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>A place in one line that moves on as it is read.</summary>
/// <param name="text">The line, or a piece of it.</param>
/// <param name="line">Where the text stands: its first character is the place's column.</param>
internal sealed class AbcCursor(string text, Place line)
{
    // No number of a tune has more digits; what has more is read as this.
    private const int LargestNumber = 999_999;

    /// <summary>What stands behind the last character.</summary>
    public const char End = '\0';

    public int At { get; private set; }

    public bool IsAtEnd => At >= text.Length;

    /// <summary>The character here; NUL at the end.</summary>
    public char Here => Ahead(0);

    /// <summary>The character after it; NUL where there is none.</summary>
    public char Next => Ahead(1);

    public char Ahead(int by) => At + by < text.Length ? text[At + by] : End;

    public void Skip(int count = 1) => At = Math.Min(At + count, text.Length);

    public void SkipToEnd() => At = text.Length;

    public void SkipBlanks()
    {
        while (!IsAtEnd && char.IsWhiteSpace(Here))
        {
            Skip();
        }
    }

    /// <summary>Takes a character if it stands here.</summary>
    public bool Take(char c)
    {
        if (IsAtEnd || Here != c)
        {
            return false;
        }

        Skip();
        return true;
    }

    /// <summary>Takes a character as often as it stands here.</summary>
    public int TakeAll(char c)
    {
        var from = At;
        while (Take(c))
        {
        }

        return At - from;
    }

    /// <summary>Takes a whole number; null where no digit stands here.</summary>
    public int? TakeNumber()
    {
        var from = At;
        var number = 0;
        while (char.IsAsciiDigit(Here))
        {
            number = Math.Min(LargestNumber, (10 * number) + (Here - '0'));
            Skip();
        }

        return At > from ? number : null;
    }

    /// <summary>Takes what stands before the next such character, and that character; null where the line has none.</summary>
    public string? TakeThrough(char end)
    {
        var taken = TextBefore(end);
        Skip(taken is null ? 0 : taken.Length + 1);
        return taken;
    }

    /// <summary>What stands before the next such character, which is not taken; null where the line has none.</summary>
    public string? TextBefore(char end)
    {
        var found = text.IndexOf(end, At);
        return found < 0 ? null : text[At..found];
    }

    /// <summary>Moves to the next place of a piece of text, or to the end.</summary>
    public void SkipTo(string piece)
    {
        var found = text.IndexOf(piece, At, StringComparison.Ordinal);
        At = found < 0 ? text.Length : found;
    }

    /// <summary>From an earlier place up to here.</summary>
    public Place From(int start) => line.Part(start, At - start);

    /// <summary>The text from an earlier place up to here.</summary>
    public string TextFrom(int start) => text[start..At];
}
