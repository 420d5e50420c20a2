using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>The small readings that several parts of an arrangement's file share.</summary>
internal abstract class JsonPieces(JsonProblems problems)
{
    // Ranges that no arrangement leaves and in which all later arithmetic is safe: a day and a minute in seconds, ...
    protected const double LongestTime = 86_400;
    protected const double LongestLead = 60;
    protected const double LargestLevel = 200;
    protected const double HighestFrequency = 100_000;
    protected const double LargestFigure = 1e12;
    protected const long LargestPrice = 1_000_000_000_000_000;
    protected const int MostOfAnything = 1_000_000;

    protected JsonProblems Problems => problems;

    protected JsonMusic Music { get; } = new(problems);

    /// <summary>The tower's, against which notes are checked.</summary>
    protected Transposition Transposition { get; set; }

    protected static Seconds Time(JsonFields fields, string name) => new(fields.Number(name, 0, LongestTime));

    protected static double Figure(JsonFields fields, string name) => fields.Number(name, -LargestFigure, LargestFigure);

    protected static Hertz Frequency(JsonFields fields, string name) => new(fields.Number(name, 0, HighestFrequency));

    protected static int Count(JsonFields fields, string name) => (int)fields.Whole(name, 0, MostOfAnything);

    protected static long Price(JsonFields fields, JsonValue value) => fields.Whole(value, -LargestPrice, LargestPrice);

    protected static long Price(JsonFields fields, string name) => fields.Whole(name, -LargestPrice, LargestPrice);

    // The default of a class is null: it fills a gap that a problem has already told of.
    protected T Object<T>(JsonValue? value, Func<JsonFields, T> read)
    {
        if (value is null || JsonFields.Of(value, Problems) is not { } fields)
        {
            return default!;
        }

        var made = read(fields);
        fields.Done();
        return made;
    }

    protected WrittenNote Note(JsonValue value) => Object(value, f => Music.Note(f, "midi", "name"));

    // A note that is struck or heard, so that its strike note has to exist.
    protected WrittenNote Bell(JsonFields fields, string number, string name)
    {
        var where = fields.Peek(number);
        var note = Music.Note(fields, number, name);
        if (where is not null && note.Midi + Transposition.Semitones is (< 0 or > 127))
        {
            Problems.Add(where, $"{note} sounds {Transposition.Semitones} semitones from itself", "a bell within MIDI notes 0 to 127");
        }

        return note;
    }

    // One of a few names.
    protected T Named<T>(JsonFields fields, string member, Func<string, T?> find, string expected)
        where T : struct
    {
        if (fields.Take(member) is not { } value)
        {
            return default;
        }

        var words = fields.Text(value);
        if (find(words) is { } found)
        {
            return found;
        }

        if (value is JsonValue.Text)
        {
            Problems.Add(value, $"'{JsonFields.Short(words)}' stands here", expected);
        }

        return default;
    }
}
