namespace Revoicer.Chords;

/// <summary>
/// Tells words that happen to begin with the letter of a root ("Fine", "A tempo", "Bridge 2", "D.C.") from chord
/// symbols with a mistake in them ("C7xyz", "Gmjr7").
/// </summary>
internal static class WordCheck
{
    /// <summary>Two letters can be a slip in a symbol ("Du"); three in a row that mean nothing in it are a word.</summary>
    public const int ShortestWord = 3;

    /// <summary>Whether the text reads as words, given where reading it as a chord failed.</summary>
    /// <param name="text">The text; its first character is the letter of a root.</param>
    /// <param name="rootEnd">Where the root with its accidentals ends.</param>
    /// <param name="fault">Where reading failed.</param>
    /// <param name="tookWord">Whether a word of the chord grammar was read before.</param>
    public static bool LooksLikeWords(string text, int rootEnd, int fault, bool tookWord)
    {
        if (tookWord || fault >= text.Length)
        {
            return false;
        }

        if (text.Length > 1 && text[1] == '.')
        {
            return true;
        }

        if (!char.IsLetter(text[fault]))
        {
            return false;
        }

        var (start, end) = RunAround(text, fault);
        var standsFirst = start == 0 || (start >= rootEnd && string.IsNullOrWhiteSpace(text[rootEnd..start]));
        var runsIntoDigit = end < text.Length && char.IsAsciiDigit(text[end]);
        return standsFirst && !runsIntoDigit && (end - start >= ShortestWord || HasWord(text.AsSpan(end)));
    }

    private static bool HasWord(ReadOnlySpan<char> text)
    {
        var run = 0;
        foreach (var c in text)
        {
            run = char.IsLetter(c) ? run + 1 : 0;
            if (run == ShortestWord)
            {
                return true;
            }
        }

        return false;
    }

    private static (int Start, int End) RunAround(string text, int place)
    {
        var (start, end) = (place, place);
        while (start > 0 && char.IsLetter(text[start - 1]))
        {
            start--;
        }

        while (end < text.Length && char.IsLetter(text[end]))
        {
            end++;
        }

        return (start, end);
    }
}
