using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.Chords;

/// <summary>What came of reading a text as one chord symbol.</summary>
/// <param name="Symbol">The chord; null where the text is none.</param>
/// <param name="Fault">What is wrong; null where there is a chord.</param>
/// <param name="Warnings">What was taken in one of several senses.</param>
/// <param name="MayBeWords">Whether the text looks like words that begin with the letter of a root.</param>
internal sealed record ParsedSymbol(
    ChordSymbol? Symbol,
    SymbolRemark? Fault,
    IReadOnlyList<SymbolRemark> Warnings,
    bool MayBeWords);

/// <summary>Reads root, suffix and bass; the text begins with the letter of the root.</summary>
internal sealed class SymbolParser(SymbolCursor cursor)
{
    /// <summary>A suffix longer than this is refused; the longest of any use has some thirty characters.</summary>
    private const int LongestSuffix = 64;

    private readonly List<SymbolRemark> _warnings = [];

    public static ParsedSymbol Parse(string text) => new SymbolParser(new SymbolCursor(text)).Parse();

    private ParsedSymbol Parse()
    {
        var text = cursor.Text;
        var root = ReadName();
        var rootEnd = cursor.Position;
        var suffix = new SuffixParser(cursor);
        var fault = ReadNatural() ?? suffix.Read();
        var written = text[rootEnd..cursor.Position].Trim();
        NoteName? bass = null;
        fault ??= ReadBass(out bass) ?? CheckLength(rootEnd, written);
        if (fault is not null)
        {
            var words = !cursor.AtEnd && WordCheck.LooksLikeWords(text, rootEnd, fault.Offset, cursor.TookWord);
            return new ParsedSymbol(null, fault, [], words);
        }

        var symbol = new ChordSymbol(root, written, ChordTones.Of(root, suffix.Degrees.All), bass);
        return new ParsedSymbol(symbol, null, [.. suffix.Warnings, .. _warnings], false);
    }

    private NoteName ReadName()
    {
        var letter = Enum.Parse<Letter>(char.ToUpperInvariant(cursor.Next).ToString());
        cursor.GoTo(cursor.Position + 1);
        return new NoteName(letter, cursor.TakeAccidentals());
    }

    // "A natural 7": the letter alone is the natural note.
    private SymbolRemark? ReadNatural() => cursor.Next == SymbolCursor.Natural
        ? new SymbolRemark(cursor.Position, 1, "a natural sign after the letter of a note says nothing", Meant(cursor.Position, cursor.Position + 1, "the letter alone"))
        : null;

    // The symbol without a piece of it, where that is one; else what is expected in words.
    private string Meant(int from, int to, string otherwise)
    {
        var meant = cursor.Text[..from] + cursor.Text[to..];
        return meant.Length <= LongestSuffix && Parse(meant).Symbol is not null ? $"'{Quoted.Text(meant)}'" : otherwise;
    }

    private SymbolRemark? ReadBass(out NoteName? bass)
    {
        bass = null;
        if (!cursor.Take('/'))
        {
            return null;
        }

        cursor.SkipBlanks();
        var from = cursor.Position;
        if (cursor.AtEnd)
        {
            return new SymbolRemark(from - 1, 1, "'/' ends the symbol", "a bass note from A to G after it");
        }

        if (cursor.TakeWord(SuffixWords.Qualities, out _) || cursor.TakeWord(SuffixWords.Modifiers, out _))
        {
            const string bassNote = "a bass note from A to G";
            var meant = Meant(from - 1, from, bassNote);
            return cursor.Unread(from, "stands where the bass note belongs", meant == bassNote ? bassNote : $"{meant}, or {bassNote}");
        }

        if (cursor.Next is not ((>= 'A' and <= 'G') or (>= 'a' and <= 'g')))
        {
            return cursor.Unread(from, "is no bass note", "a letter from A to G, perhaps with # or b");
        }

        var isSmall = char.IsAsciiLetterLower(cursor.Next);
        bass = ReadName();

        // Collections of tunes in ABC write basses in small letters, "D/f+" for D over F sharp.
        if (isSmall && bass.Value.Alteration == 0 && cursor.Take('+'))
        {
            bass = bass.Value with { Alteration = 1 };
        }

        if (ReadNatural() is { } natural)
        {
            return natural;
        }

        if (!cursor.AtEnd)
        {
            return cursor.Unread(cursor.Position, "stands after the bass note", "the end of the symbol");
        }

        if (isSmall)
        {
            var small = cursor.Text[from..];
            _warnings.Add(new SymbolRemark(from, small.Length, $"the bass '{small}' is taken as {bass}", $"'{bass}'"));
        }

        return null;
    }

    private static SymbolRemark? CheckLength(int rootEnd, string suffix) => suffix.Length > LongestSuffix
        ? new SymbolRemark(rootEnd, suffix.Length, $"a chord symbol with {suffix.Length} characters after its root", $"at most {LongestSuffix}")
        : null;
}
