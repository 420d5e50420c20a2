using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Reads the music code of one voice, element by element.</summary>
/// <param name="voice">Takes what is read.</param>
/// <param name="remarks">Takes problems and warnings.</param>
internal sealed class MusicReader(TuneVoice voice, Remarks remarks)
{
    private readonly SignReader _signs = new(voice, remarks);
    private readonly SymbolTexts _symbols = new(voice, remarks);
    private readonly Decorations _decorations = new(voice, remarks);
    private bool _inOverlay;

    /// <summary>A letter is defined by "U:" and no longer means what the standard says.</summary>
    public void Redefine(char letter) => _decorations.Redefine(letter);

    /// <summary>Reads the element here and moves behind it. Inline fields are the caller's.</summary>
    public void ReadElement(AbcCursor cursor)
    {
        var from = cursor.At;
        if (SignReader.IsBarLine(cursor))
        {
            _inOverlay = false;
            _signs.ReadBarLine(cursor);
            return;
        }

        switch (cursor.Here)
        {
            case '"':
                ReadQuoted(cursor);
                break;
            case var _ when _inOverlay:
                cursor.Skip();
                break;
            case ' ' or '\t' or '`' or '$' or ')' or '\\':
                // Blanks, help for the eye, ends of slurs, a line that goes on.
                cursor.Skip();
                break;
            case '{':
                SkipThrough(cursor, '{', '}', "grace notes");
                break;
            case '(':
                _signs.ReadTupletOrSlur(cursor);
                break;
            case '[':
                ReadBracket(cursor);
                break;
            case '-':
                cursor.Skip();
                voice.Tie(cursor.From(from));
                SignReader.TakeSide(cursor);
                break;
            case '>' or '<':
                var sign = cursor.Here;
                voice.Break(cursor.TakeAll(sign), sign == '>', cursor.From(from));
                break;
            case '&':
                cursor.Skip();
                _inOverlay = true;
                remarks.WarnOnce(cursor.From(from), "a second voice inside a bar, '&', is passed over", "the tune before '&'");
                break;
            case (>= 'A' and <= 'G') or (>= 'a' and <= 'g') or '^' or '_' or '=':
                ReadNote(cursor);
                break;
            case 'x' or 'y' or 'z' or 'X' or 'Z':
                ReadRest(cursor);
                break;
            default:
                _decorations.Read(cursor);
                break;
        }
    }

    private void ReadNote(AbcCursor cursor)
    {
        var from = cursor.At;
        if (TakeTone(cursor) is { } tone)
        {
            voice.AddSound([tone], AbcFactor.One, cursor.From(from));
        }
    }

    // A pitch with its length; null with a problem where there is none.
    private AbcTone? TakeTone(AbcCursor cursor)
    {
        var from = cursor.At;
        var pitch = AbcPitch.Take(cursor);
        if (pitch is null)
        {
            cursor.Skip(cursor.At == from ? 1 : 0);
            remarks.Refuse(cursor.From(from), $"'{Quoted.Text(cursor.TextFrom(from))}' is no note", "a letter from A to G behind ^, = or _");
            return null;
        }

        return TakeFactor(cursor) is { } factor ? new AbcTone(pitch.Value, factor, IsTied: false, cursor.From(from)) : null;
    }

    private AbcFactor? TakeFactor(AbcCursor cursor)
    {
        var from = cursor.At;
        var factor = AbcFactor.Take(cursor);
        if (factor is null)
        {
            remarks.Refuse(cursor.From(from), $"'{Quoted.Text(cursor.TextFrom(from))}' is no length of a note", "such as 2, /, 3/2; numbers from 1 to 4096");
        }

        return factor;
    }

    private void ReadRest(AbcCursor cursor)
    {
        var from = cursor.At;
        var letter = cursor.Here;
        cursor.Skip();
        if (TakeFactor(cursor) is not { } factor)
        {
            return;
        }

        if (letter is 'x' or 'z')
        {
            voice.AddRest(factor, cursor.From(from));
        }
        else if (letter is 'X' or 'Z')
        {
            // Length / denominator makes no sense for whole bars.
            if (factor.Denominator != 1)
            {
                remarks.Refuse(cursor.From(from), "a rest of a part of a bar", "'Z' with a whole number of bars, or 'z'");
            }

            voice.AddBarsOfRest(factor.Numerator, cursor.From(from));
        }
    }

    private void ReadBracket(AbcCursor cursor)
    {
        if (char.IsAsciiDigit(cursor.Next))
        {
            cursor.Skip();
            _signs.ReadEnding(cursor);
            return;
        }

        var from = cursor.At;
        cursor.Skip();
        if (!HasEnd(cursor))
        {
            remarks.Refuse(cursor.From(from), "'[' without ']'", "']' after the last note of the chord");
            return;
        }

        var tones = new List<AbcTone>();
        while (!cursor.IsAtEnd && !cursor.Take(']'))
        {
            ReadInChord(cursor, tones);
        }

        if (TakeFactor(cursor) is not { } factor)
        {
            return;
        }
        else if (tones.Count > 0)
        {
            voice.AddSound(tones, factor, cursor.From(from));
        }
        else
        {
            remarks.Refuse(cursor.From(from), "a chord without notes", "notes between '[' and ']'");
        }
    }

    // Whether the chord that is open here ends before a bar line or another bracket. Where it does not, what stands up to
    // there is passed over, so that one slip is told once.
    private static bool HasEnd(AbcCursor cursor)
    {
        var length = 0;
        for (var isQuoted = false; cursor.Ahead(length) is not AbcCursor.End and var here; length++)
        {
            isQuoted ^= here == '"';
            if (!isQuoted && here is ']' or '|' or '[')
            {
                break;
            }
        }

        var hasEnd = cursor.Ahead(length) == ']';
        cursor.Skip(hasEnd ? 0 : length);
        return hasEnd;
    }

    private void ReadInChord(AbcCursor cursor, List<AbcTone> tones)
    {
        switch (cursor.Here)
        {
            case '"':
                ReadQuoted(cursor);
                break;
            case ' ' or '\t' or ')':
                cursor.Skip();
                break;
            case '(':
                cursor.Skip();
                SignReader.TakeSide(cursor);
                break;
            case '-' when tones.Count > 0:
                cursor.Skip();
                SignReader.TakeSide(cursor);
                tones[^1] = tones[^1] with { IsTied = true };
                break;
            case (>= 'A' and <= 'G') or (>= 'a' and <= 'g') or '^' or '_' or '=':
                if (TakeTone(cursor) is { } tone)
                {
                    tones.Add(tone);
                }

                break;
            default:
                _decorations.Read(cursor);
                break;
        }
    }

    private void ReadQuoted(AbcCursor cursor)
    {
        var from = cursor.At;
        cursor.Skip();
        if (cursor.TakeThrough('"') is not { } text)
        {
            cursor.SkipToEnd();
            remarks.Refuse(cursor.From(from), "a quotation mark without its other", "'\"' after the chord symbol or text");
        }
        else if (!_inOverlay && text is not ['^' or '_' or '<' or '>' or '@', ..])
        {
            _symbols.Read(text, cursor.From(from).Part(1, text.Length));
        }
    }

    private void SkipThrough(AbcCursor cursor, char open, char close, string what)
    {
        var from = cursor.At;
        if (cursor.TakeThrough(close) is null)
        {
            cursor.SkipToEnd();
            remarks.Refuse(cursor.From(from), $"{what} without an end: '{open}'", $"'{close}' behind them");
        }
    }
}
