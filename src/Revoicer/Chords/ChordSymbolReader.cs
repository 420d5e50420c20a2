using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Chords;

/// <summary>Reads chord symbols as musicians write them; docs/chord-symbols.md says what is read in which sense.</summary>
public static class ChordSymbolReader
{
    private const string WhatAChordIs = "a chord symbol such as C, F#m7 or Bb/D, or N.C.";

    /// <summary>
    /// Reads a text that stands where a chord symbol may stand: a chord, an alternate in brackets, N.C., or words.
    /// </summary>
    /// <example>"Bbm7/Db" is a chord; "(E7)" an alternate; "N.C." no chord; "a tempo" words; "C7b15" is refused.</example>
    /// <param name="text">The text; blanks around it do not matter. Any text ends in one of the outcomes.</param>
    /// <param name="at">Where the text stands: its first character is the place's column.</param>
    /// <returns>
    /// What the text is, with a warning where it was taken in one of several senses; refused, with the place of what
    /// cannot be read, where it means to be a chord and cannot be read as exactly one.
    /// </returns>
    public static Reading<ChordText> Read(string text, Place at)
    {
        var trimmed = text.Trim();
        var place = at.Part(text.Length - text.TrimStart().Length, trimmed.Length);
        return trimmed switch
        {
            "" => Reading<ChordText>.Of(new ChordText.Words("")),
            _ when IsNoChord(trimmed) => Reading<ChordText>.Of(new ChordText.NoChord()),
            ['(', ..] => ReadBracketed(trimmed, place),
            [(>= 'A' and <= 'G') or (>= 'a' and <= 'g'), ..] => ReadSymbol(trimmed, place),
            _ when IsGermanB(trimmed) => Reading<ChordText>.No(place, $"'{Quoted.Text(trimmed)}' is no chord here", "a root from A to G (B where German charts write H)"),
            _ => Words(trimmed),
        };
    }

    /// <summary>Whether a text begins with a word of a suffix that is longer than a letter or two: "add9", "dim", "alt".</summary>
    internal static bool IsSuffixWord(string text)
    {
        var cursor = new SymbolCursor(text);
        return (cursor.TakeWord(SuffixWords.Qualities, out _) || cursor.TakeWord(SuffixWords.Modifiers, out _)) && cursor.TookWord;
    }

    private static bool IsNoChord(string text) =>
        text.ToUpperInvariant() is "N.C." or "N.C" or "NC" or "NC.";

    private static bool IsGermanB(string text) => text[0] == 'H' && SymbolParser.Parse("B" + text[1..]).Symbol is not null;

    private static Reading<ChordText> Words(string text) => Reading<ChordText>.Of(new ChordText.Words(text));

    private static Reading<ChordText> ReadSymbol(string text, Place place)
    {
        if (char.IsAsciiLetterLower(text[0]))
        {
            return ReadSmall(text, place);
        }

        var parsed = SymbolParser.Parse(text);
        return parsed switch
        {
            { Symbol: { } symbol } => new Reading<ChordText>.Accepted(
                new ChordText.Chord(symbol),
                parsed.Warnings.Select(w => w.At(place)).ToItems()),
            { MayBeWords: true } => Words(text),
            _ => new Reading<ChordText>.Refused([parsed.Fault!.At(place)]),
        };
    }

    // A small letter can be a minor chord, a single bass note, or a chord written in haste: not for a program to say.
    private static Reading<ChordText> ReadSmall(string text, Place place)
    {
        var capital = char.ToUpperInvariant(text[0]) + text[1..];
        var parsed = SymbolParser.Parse(capital);
        if (parsed.Symbol is not null)
        {
            return Reading<ChordText>.No(
                place,
                $"'{Quoted.Text(text)}' begins with a small letter, which can be a chord or a single note",
                $"a root in capitals: '{Quoted.Text(capital)}'");
        }

        return parsed.MayBeWords
            ? Words(text)
            : Reading<ChordText>.No(place, $"'{Quoted.Text(text)}' is no chord", WhatAChordIs);
    }

    private static Reading<ChordText> ReadBracketed(string text, Place place)
    {
        var isWhole = text[^1] == ')' && text.Length > 1;
        var inner = isWhole ? text[1..^1] : text[1..];
        if (inner.TrimStart() is "" or ['(', ..])
        {
            return Words(text);
        }

        return Read(inner, place.Part(1, inner.Length)) switch
        {
            Reading<ChordText>.Accepted { Value: ChordText.Chord chord } accepted when isWhole =>
                accepted with { Value = new ChordText.Alternate(chord.Symbol) },
            Reading<ChordText>.Accepted { Value: ChordText.Chord } =>
                Reading<ChordText>.No(place.Part(0, 1), "'(' before the chord has no end", "a ')' after it"),
            Reading<ChordText>.Refused refused when !isWhole => refused,
            _ => Words(text),
        };
    }
}
