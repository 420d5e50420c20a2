using System.Globalization;
using System.Text.Json;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>Reads musical values from the members of an object.</summary>
internal static class JsonMusic
{
    // Within these no sum of a few places overflows; a piece of 100,000 quarters lasts twenty hours.
    private const long MostQuarters = 100_000;
    private const long LargestDenominator = 10_000;

    // No music is slower or faster; a MIDI file could hold neither much below nor ever above.
    private const double SlowestQuarters = 4;
    private const double FastestQuarters = 6000;

    /// <summary>A place or length: "3/2".</summary>
    public static Beats Beats(this JsonFields fields, string name)
    {
        const string expected = "0 to 100000 quarter notes as a text, \"3\" or \"3/2\", parted in at most 10000";
        if (fields.Take(name) is not { } value)
        {
            return default;
        }

        if (value.ValueKind != JsonValueKind.String)
        {
            fields.RefuseKind(value, expected);
            return default;
        }

        return Parsed(fields, value, Fraction, expected) ?? default;
    }

    /// <summary>A written note, its name checked against its number.</summary>
    public static WrittenNote Note(this JsonFields fields, string number, string name)
    {
        var note = WrittenNote.AtMidi((int)fields.Whole(number, 0, 127));
        if (fields.Take(name) is { } value && fields.Text(value) is var text && value.ValueKind == JsonValueKind.String && text != note.ToString())
        {
            fields.Refuse(value, $"'{JsonFields.Short(text)}' is not the name of note {note.Midi}", $"\"{note}\", or another number");
        }

        return note;
    }

    /// <summary>A note as an object of its number and its name.</summary>
    public static WrittenNote Note(JsonFields fields) => fields.Note("midi", "name");

    /// <summary>A note that is struck or heard, so that its strike note has to exist.</summary>
    /// <param name="fields">The members.</param>
    /// <param name="transposition">The tower's.</param>
    /// <param name="number">The member that has its number.</param>
    /// <param name="name">The member that has its name.</param>
    public static WrittenNote Bell(this JsonFields fields, Transposition transposition, string number = "midi", string name = "name")
    {
        var where = fields.Peek(number);
        var note = fields.Note(number, name);
        if (where is { } value && note.Midi + transposition.Semitones is < 0 or > 127)
        {
            fields.Refuse(value, $"{note} sounds {transposition.Semitones} semitones from itself", "a bell within MIDI notes 0 to 127");
        }

        return note;
    }

    /// <summary>A key's name or null.</summary>
    public static KeySignature? Key(this JsonFields fields, string name) => fields.TakeUnlessNull(name) is { } value
        ? Parsed<KeySignature>(fields, value, t => KeySignature.TryParse(t, out var key) ? key : null, "a key of at most seven accidentals, \"Bb minor\", or null")
        : null;

    /// <summary>A spelled note without octave, or null.</summary>
    public static NoteName? Name(this JsonFields fields, string name) =>
        fields.TakeUnlessNull(name) is { } value ? Parsed(fields, value, Spelled, "a note's name, \"Eb\", or null") : null;

    /// <summary>Spelled notes without octave in one text, a blank between them.</summary>
    public static Items<NoteName> Names(this JsonFields fields, string name) =>
        Several(fields, name, Spelled, "names of notes with blanks between, \"C Eb G\"");

    /// <summary>Places in one text, a blank between them; none in an empty one.</summary>
    public static Items<Beats> Places(this JsonFields fields, string name) =>
        Several(fields, name, Fraction, "places with blanks between, \"0 3/2\", or \"\"");

    /// <summary>How a sheet writes a note, from its two members; null where both are.</summary>
    public static SheetNote? Sheet(this JsonFields fields, string name, string length)
    {
        var spelled = fields.Name(name);
        if (fields.Peek(length) is not { ValueKind: not JsonValueKind.Null } where)
        {
            fields.Take(length);
            return null;
        }

        var lasts = fields.Beats(length);
        if (where.ValueKind == JsonValueKind.String && (spelled is null || lasts <= Music.Beats.Zero))
        {
            fields.Refuse(where, "a note's length stands here", spelled is null ? "null, where no name is given" : "a length above 0");
        }

        return spelled is { } given ? new SheetNote(given, lasts) : null;
    }

    /// <summary>A time signature: "6/8".</summary>
    public static Meter Meter(this JsonFields fields, string name)
    {
        var assumed = new Meter(4, 4);
        return fields.Take(name) is { } value ? Parsed(fields, value, Signature, "a time signature, \"6/8\"") ?? assumed : assumed;
    }

    /// <summary>A speed from its two members.</summary>
    public static Tempo Tempo(this JsonFields fields)
    {
        var unit = fields.Beats("unit");
        var value = fields.Take("perMinute");
        if (value is { ValueKind: JsonValueKind.Number } perMinute)
        {
            var tempo = new Tempo(unit, perMinute.GetDouble());
            if (tempo.QuartersPerMinute is >= SlowestQuarters and <= FastestQuarters)
            {
                return tempo;
            }
        }

        if (value is { } wrong)
        {
            fields.Refuse(wrong, "no tempo that can be played", "a number that makes 4 to 6000 quarter notes a minute");
        }

        return new Tempo(Music.Beats.OfQuarters(1), SlowestQuarters);
    }

    private static T? Parsed<T>(JsonFields fields, JsonElement value, Func<string, T?> parse, string expected)
        where T : struct
    {
        var parsed = parse(fields.Text(value));
        if (parsed is null)
        {
            fields.RefuseText(value, expected);
        }

        return parsed;
    }

    private static Items<T> Several<T>(JsonFields fields, string name, Func<string, T?> parse, string expected)
        where T : struct
    {
        if (fields.Take(name) is not { } value)
        {
            return [];
        }

        var parsed = fields.Text(value).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(parse).ToArray();
        if (parsed.Contains(null))
        {
            fields.RefuseText(value, expected);
        }

        return parsed.OfType<T>().ToItems();
    }

    private static NoteName? Spelled(string text)
    {
        for (var letter = Letter.C; letter <= Letter.B; letter++)
        {
            for (var alteration = -4; alteration <= 4; alteration++)
            {
                var spelled = new NoteName(letter, alteration);
                if (spelled.ToString() == text)
                {
                    return spelled;
                }
            }
        }

        return null;
    }

    private static Meter? Signature(string text)
    {
        var parts = text.Split('/');
        return parts.Length == 2
            && Whole(parts[0]) is >= 1 and <= 255 and var upper
            && Whole(parts[1]) is (1 or 2 or 4 or 8 or 16 or 32 or 64) and var lower
                ? new Meter((int)upper, (int)lower)
                : null;
    }

    private static Beats? Fraction(string text)
    {
        var parts = text.Split('/', 3);
        return parts.Length <= 2
            && Whole(parts[0]) is { } numerator
            && (parts.Length == 1 ? 1 : Whole(parts[1])) is >= 1 and <= LargestDenominator and var denominator
            && numerator >= 0
            && numerator / (double)denominator <= MostQuarters
                ? Music.Beats.OfQuarters(numerator, denominator)
                : null;
    }

    private static long? Whole(string text) =>
        text.Length <= 12 && long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole)
            ? whole
            : null;
}
