using Revoicer.Text;

namespace Revoicer.Chords;

/// <summary>
/// A place that walks through the text of a symbol. Signs that are written in several ways are seen as one; each stays
/// one character, so that offsets are those of the text as written.
/// </summary>
internal sealed class SymbolCursor(string text)
{
    /// <summary>The natural sign, which no symbol needs.</summary>
    public const char Natural = '\u266E';

    /// <summary>What <see cref="Next"/> and <see cref="After"/> give beyond the end; no rule asks for it.</summary>
    public const char End = '\0';

    // Accidentals in music fonts that keep to SMuFL 1.4 (standard accidentals, U+E260 to U+E264), from memory.
    private const char FontFlat = '\uE260';
    private const char FontNatural = '\uE261';
    private const char FontSharp = '\uE262';
    private const char FontDoubleSharp = '\uE263';
    private const char FontDoubleFlat = '\uE264';

    // Musical Symbol Double Sharp and Double Flat (Unicode U+1D12A, U+1D12B) are two UTF-16 characters each.
    private const string DoubleSharpSign = "\uD834\uDD2A";
    private const string DoubleFlatSign = "\uD834\uDD2B";

    private readonly string _plain = string.Create(text.Length, text, (plain, written) =>
    {
        for (var i = 0; i < plain.Length; i++)
        {
            plain[i] = Plain(written[i]);
        }
    });

    /// <summary>The text as written.</summary>
    public string Text => text;

    public int Position { get; private set; }

    public bool AtEnd => Position >= _plain.Length;

    public char Next => After(0);

    /// <summary>Whether a word of three letters or more was taken: the text means to be a chord.</summary>
    public bool TookWord { get; private set; }

    public bool Sees(string piece) => string.CompareOrdinal(_plain, Position, piece, 0, piece.Length) == 0;

    public char After(int offset) => Position + offset < _plain.Length ? _plain[Position + offset] : End;

    public bool Take(char sign)
    {
        var taken = Next == sign && !AtEnd;
        Position += taken ? 1 : 0;
        return taken;
    }

    public bool Take(string piece)
    {
        var taken = Sees(piece);
        Position += taken ? piece.Length : 0;
        return taken;
    }

    /// <summary>Steps over white space; true where there was some.</summary>
    public bool SkipBlanks()
    {
        var from = Position;
        while (!AtEnd && char.IsWhiteSpace(Next))
        {
            Position++;
        }

        return Position > from;
    }

    /// <summary>The digits that follow, perhaps none.</summary>
    public string TakeDigits()
    {
        var from = Position;
        while (char.IsAsciiDigit(Next))
        {
            Position++;
        }

        return _plain[from..Position];
    }

    /// <summary>
    /// The accidentals of a note name in semitones: at most two of one kind, an x, or a sign for two.
    /// </summary>
    public int TakeAccidentals()
    {
        if (Take(DoubleSharpSign) || Take(FontDoubleSharp) || Take('x'))
        {
            return 2;
        }

        if (Take(DoubleFlatSign) || Take(FontDoubleFlat))
        {
            return -2;
        }

        return Take('#') ? (Take('#') ? 2 : 1) : Take('b') ? (Take('b') ? -2 : -1) : 0;
    }

    /// <summary>Takes the first word of a table (longest words first) that stands here.</summary>
    public bool TakeWord<T>(SuffixWord<T>[] table, out T meaning)
    {
        foreach (var word in table)
        {
            if (word.Lead(this) is > 0 and var length)
            {
                Position += length;
                TookWord |= length >= WordCheck.ShortestWord;

                // "dim." and "alt.": an abbreviation may carry its full stop.
                Position += length > 1 && Next == '.' ? 1 : 0;
                meaning = word.Meaning;
                return true;
            }
        }

        meaning = default!;
        return false;
    }

    public void GoTo(int position) => Position = position;

    /// <summary>From a place on, up to the next blank, bracket, comma or slash; at least one character.</summary>
    public SymbolRemark Unread(int from, string said, string expected)
    {
        var end = from;
        while (end < _plain.Length && (end == from || !(char.IsWhiteSpace(_plain[end]) || "(),/".Contains(_plain[end]))))
        {
            end++;
        }

        return new SymbolRemark(from, end - from, $"'{Quoted.Text(text[from..end])}' {said}", expected);
    }

    /// <summary>A number that is not there, or not the right one.</summary>
    public SymbolRemark Missing(int at, string digits, string expected)
    {
        if (digits.Length > 0)
        {
            return new SymbolRemark(at, digits.Length, $"'{Quoted.Text(digits)}' is no degree", expected);
        }

        return AtEnd
            ? new SymbolRemark(Math.Max(0, at - 1), 1, "the symbol ends too early", expected)
            : Unread(at, "is no degree", expected);
    }

    private static char Plain(char c) => c switch
    {
        '\u266F' or FontSharp => '#',
        '\u266D' or FontFlat => 'b',
        FontNatural => Natural,
        '\u2212' or '\u2013' => '-',
        '\u00B0' or '\u00BA' => '\u00B0', // degree sign, and the ordinal sign that looks like it
        '\u00F8' or '\u00D8' => '\u00F8', // o with stroke
        '\u0394' or '\u2206' or '\u25B3' => '\u0394', // delta, increment, triangle
        '\u00B2' => '2',
        '\u2074' => '4',
        '\u2075' => '5',
        '\u2076' => '6',
        '\u2077' => '7',
        '\u2079' => '9',
        _ => c,
    };
}
