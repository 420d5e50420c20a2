using Revoicer.Music;

namespace Revoicer.LeadSheets.Abc;

/// <summary>A note's pitch as written, before key and bar add their accidentals.</summary>
/// <param name="Letter">Its letter.</param>
/// <param name="Octave">Its octave; 4 is that of middle C, "C" in ABC.</param>
/// <param name="Accidental">The accidental before it in semitones; null where there is none.</param>
internal readonly record struct AbcPitch(Letter Letter, int Octave, int? Accidental)
{
    // More marks than that leave the range of notes whatever the letter.
    private const int MostOctaveMarks = 10;

    /// <summary>Takes ^, ^^, =, _ or __; null where none of them stands here.</summary>
    public static int? TakeAccidental(AbcCursor cursor)
    {
        switch (cursor.Here)
        {
            case '=':
                cursor.Skip();
                return 0;
            case '^' or '_':
                var sign = cursor.Here;
                cursor.Skip();
                var size = cursor.Take(sign) ? 2 : 1;
                return sign == '^' ? size : -size;
            default:
                return null;
        }
    }

    /// <summary>Takes a pitch; null where none stands here.</summary>
    public static AbcPitch? Take(AbcCursor cursor)
    {
        var accidental = TakeAccidental(cursor);
        var c = cursor.Here;
        if (char.ToUpperInvariant(c) is not (>= 'A' and <= 'G'))
        {
            return null;
        }

        cursor.Skip();
        var octave = char.IsAsciiLetterLower(c) ? 5 : 4;
        for (var marks = 0; cursor.Here is '\'' or ','; marks++)
        {
            octave += marks >= MostOctaveMarks ? 0 : cursor.Here == '\'' ? 1 : -1;
            cursor.Skip();
        }

        return new AbcPitch(Enum.Parse<Letter>(char.ToUpperInvariant(c).ToString()), octave, accidental);
    }
}
