using System.Globalization;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>Reads musical values from the members of a file.</summary>
internal sealed class JsonMusic(JsonProblems problems)
{
    // Within these no sum of a few places overflows; a piece of 100,000 quarters lasts twenty hours.
    private const long MostQuarters = 100_000;
    private const long LargestDenominator = 10_000;

    // No music is slower or faster; a MIDI file could hold neither much below nor ever above.
    private const double SlowestQuarters = 4;
    private const double FastestQuarters = 6000;

    /// <summary>A place or length: "3/2".</summary>
    public Beats Beats(JsonFields fields, string name)
    {
        const string expected = "0 to 100000 quarter notes as a text, \"3\" or \"3/2\", parted in at most 10000";
        var value = fields.Take(name);
        if (value is JsonValue.Text text)
        {
            if (Fraction(text.Value) is { } beats)
            {
                return beats;
            }

            problems.Add(value, $"'{JsonFields.Short(text.Value)}' stands here", expected);
        }
        else if (value is not null)
        {
            problems.Add(value, $"{value.Kind} stands here", expected);
        }

        return default;
    }

    /// <summary>A written note, its name checked against its number.</summary>
    public WrittenNote Note(JsonFields fields, string number, string name)
    {
        var note = WrittenNote.AtMidi((int)fields.Whole(number, 0, 127));
        if (fields.Take(name) is { } value && fields.Text(value) is var text && value is JsonValue.Text && text != note.ToString())
        {
            problems.Add(value, $"'{JsonFields.Short(text)}' is not the name of note {note.Midi}", $"\"{note}\", or another number");
        }

        return note;
    }

    /// <summary>A key's name or null.</summary>
    public KeySignature? Key(JsonFields fields, string name)
    {
        if (fields.TakeUnlessNull(name) is not { } value)
        {
            return null;
        }

        if (KeySignature.TryParse(fields.Text(value), out var key))
        {
            return key;
        }

        AddUnlessOtherKind(value, "a key of at most seven accidentals, \"Bb minor\", or null");
        return null;
    }

    /// <summary>A spelled note without octave, or null.</summary>
    public NoteName? Name(JsonFields fields, string name)
    {
        if (fields.TakeUnlessNull(name) is not { } value)
        {
            return null;
        }

        if (Spelled(fields.Text(value)) is { } spelled)
        {
            return spelled;
        }

        AddUnlessOtherKind(value, "a note's name, \"Eb\", or null");
        return null;
    }

    /// <summary>Spelled notes without octave in one text, a blank between them.</summary>
    public Items<NoteName> Names(JsonFields fields, string name)
    {
        if (fields.Take(name) is not { } value)
        {
            return [];
        }

        var names = fields.Text(value).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Spelled).ToArray();
        if (names.Contains(null))
        {
            AddUnlessOtherKind(value, "names of notes with blanks between, \"C Eb G\"");
        }

        return names.OfType<NoteName>().ToItems();
    }

    /// <summary>Places in one text, a blank between them; none in an empty one.</summary>
    public Items<Beats> Places(JsonFields fields, string name)
    {
        if (fields.Take(name) is not { } value)
        {
            return [];
        }

        var places = fields.Text(value).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Fraction).ToArray();
        if (places.Contains(null))
        {
            AddUnlessOtherKind(value, "places with blanks between, \"0 3/2\", or \"\"");
        }

        return places.OfType<Beats>().ToItems();
    }

    /// <summary>How a sheet writes a note, from its two members; null where both are.</summary>
    public SheetNote? Sheet(JsonFields fields, string name, string length)
    {
        var where = fields.Peek(length);
        var spelled = Name(fields, name);
        if (where is null or JsonValue.Nothing)
        {
            fields.Take(length);
            return null;
        }

        var lasts = Beats(fields, length);
        if (where is JsonValue.Text && (spelled is null || lasts <= Music.Beats.Zero))
        {
            problems.Add(where, "a note's length stands here", spelled is null ? "null, where no name is given" : "a length above 0");
        }

        return spelled is { } given ? new SheetNote(given, lasts) : null;
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

    /// <summary>A time signature: "6/8".</summary>
    public Meter Meter(JsonFields fields, string name)
    {
        if (fields.Take(name) is not { } value)
        {
            return new Meter(4, 4);
        }

        var parts = fields.Text(value).Split('/');
        if (parts.Length == 2
            && Whole(parts[0]) is >= 1 and <= 255 and var upper
            && Whole(parts[1]) is 1 or 2 or 4 or 8 or 16 or 32 or 64)
        {
            return new Meter((int)upper, (int)Whole(parts[1])!.Value);
        }

        AddUnlessOtherKind(value, "a time signature, \"6/8\"");
        return new Meter(4, 4);
    }

    /// <summary>A speed from its two members.</summary>
    public Tempo Tempo(JsonFields fields)
    {
        var unit = Beats(fields, "unit");
        var value = fields.Take("perMinute");
        if (value is JsonValue.Number { Value: var perMinute })
        {
            var tempo = new Tempo(unit, perMinute);
            if (tempo.QuartersPerMinute is >= SlowestQuarters and <= FastestQuarters)
            {
                return tempo;
            }
        }

        if (value is not null)
        {
            problems.Add(value, "no tempo that can be played", "a number that makes 4 to 6000 quarter notes a minute");
        }

        return new Tempo(Music.Beats.OfQuarters(1), SlowestQuarters);
    }

    private void AddUnlessOtherKind(JsonValue value, string expected)
    {
        // A value of another kind has been reported as such already.
        if (value is JsonValue.Text text)
        {
            problems.Add(value, $"'{JsonFields.Short(text.Value)}' stands here", expected);
        }
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
