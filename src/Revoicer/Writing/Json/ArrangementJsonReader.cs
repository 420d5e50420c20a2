using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>
/// Makes an arrangement of the members of a file. What is wrong goes to the problems, and reading goes on with a value
/// that is never used, so that all problems are found at once.
/// </summary>
internal sealed class ArrangementJsonReader(JsonProblems problems)
{
    // Ranges that no arrangement leaves and in which all later arithmetic is safe: a day and a minute in seconds, ...
    private const double LongestTime = 86_400;
    private const double LongestLead = 60;
    private const double LargestLevel = 200;
    private const double HighestFrequency = 100_000;
    private const double LargestFigure = 1e12;
    private const long LargestPrice = 1_000_000_000_000_000;
    private const int MostOfAnything = 1_000_000;

    private readonly JsonMusic _music = new(problems);
    private Transposition _transposition;
    private Items<Stroke> _strokes = [];

    public Arrangement Arrangement(JsonFields fields)
    {
        fields.Whole("format", ArrangementJson.Format, ArrangementJson.Format);

        // Notes are checked against the tower's transposition, choices against the strokes: so these come first.
        var tower = Object(fields.Take("tower"), Tower);
        _transposition = tower?.Transposition ?? default;
        _strokes = fields.List("strokes", v => Object(v, Stroke));
        var arrangement = new Arrangement(
            fields.Text("title"),
            tower!,
            fields.Text("sound"),
            _music.Key(fields, "writtenKey"),
            _music.Key(fields, "soundingKey"),
            new TempoMap(Tempi(fields)),
            fields.Truth("tempoIsAssumed"),
            NotEmpty(fields, "bars", Bar),
            Time(fields, "shift"),
            _strokes,
            fields.List("choices", v => Object(v, Choice)),
            Object(fields.Take("totals"), Totals),
            Object(fields.Take("status"), Status));
        fields.Done();
        return arrangement;
    }

    private static Seconds Time(JsonFields fields, string name) => new(fields.Number(name, 0, LongestTime));

    private static double Figure(JsonFields fields, string name) => fields.Number(name, -LargestFigure, LargestFigure);

    private static Hertz Frequency(JsonFields fields, string name) => new(fields.Number(name, 0, HighestFrequency));

    private static int Count(JsonFields fields, string name) => (int)fields.Whole(name, 0, MostOfAnything);

    private static long Price(JsonFields fields, string name) => fields.Whole(name, -LargestPrice, LargestPrice);

    // The default of a class is null: it fills a gap that a problem has already told of.
    private T Object<T>(JsonValue? value, Func<JsonFields, T> read)
    {
        if (value is null || JsonFields.Of(value, problems) is not { } fields)
        {
            return default!;
        }

        var made = read(fields);
        fields.Done();
        return made;
    }

    private Items<T> NotEmpty<T>(JsonFields fields, string name, Func<JsonFields, T> read)
    {
        var list = fields.Take(name);
        if (list is JsonValue.List { Elements.Count: > 0 } found)
        {
            return found.Elements.Select(v => Object(v, read)).ToItems();
        }

        if (list is not null)
        {
            problems.Add(list, list is JsonValue.List ? "an empty list stands here" : $"{list.Kind} stands here", "a list of at least one object");
        }

        return [];
    }

    private WrittenNote Note(JsonValue value) => Object(value, f => _music.Note(f, "midi", "name"));

    private TowerSummary Tower(JsonFields fields) => new(
        fields.Text("name"),
        Count(fields, "bells"),
        Note(fields.Take("lowest")!),
        Note(fields.Take("highest")!),
        fields.List("missing", Note),
        Count(fields, "measuredBells"),
        new Transposition((int)fields.Whole("transposition", -127, 127)));

    private Items<TempoChange> Tempi(JsonFields fields)
    {
        // In order of place, the first at zero: the tempo map's own promise.
        Beats? last = null;
        return NotEmpty(fields, "tempi", f =>
        {
            var where = f.Peek("from");
            var change = new TempoChange(_music.Beats(f, "from"), _music.Tempo(f));
            if (where is not null && (last is { } before ? change.From <= before : change.From != Beats.Zero))
            {
                problems.Add(where, $"a tempo from {change.From}", last is null ? "the first tempo from 0" : $"a place after {last}");
            }

            last = change.From;
            return change;
        });
    }

    private ArrangedBar Bar(JsonFields fields)
    {
        var where = fields.Peek("length");
        var bar = new ArrangedBar(
            Count(fields, "number"),
            Count(fields, "pass"),
            _music.Beats(fields, "start"),
            _music.Beats(fields, "length"),
            _music.Meter(fields, "meter"));
        if (where is JsonValue.Text && bar.Length <= Beats.Zero)
        {
            problems.Add(where, $"a bar of {bar.Length} quarter notes", "a bar that lasts");
        }

        return bar;
    }

    // A note that is struck or heard, so that its strike note has to exist.
    private WrittenNote Bell(JsonFields fields, string number, string name)
    {
        var where = fields.Peek(number);
        var note = _music.Note(fields, number, name);
        if (where is not null && note.Midi + _transposition.Semitones is (< 0 or > 127))
        {
            problems.Add(where, $"{note} sounds {_transposition.Semitones} semitones from itself", "a bell within MIDI notes 0 to 127");
        }

        return note;
    }

    private Stroke Stroke(JsonFields fields) => new(
        Bell(fields, "midi", "name"),
        Limb(fields),
        _music.Beats(fields, "beat"),
        new Seconds(fields.Number("lead", 0, LongestLead)),
        Time(fields, "at"),
        new Decibels(fields.Number("level", -LargestLevel, LargestLevel)));

    private Limb Limb(JsonFields fields)
    {
        if (fields.Take("limb") is not { } value)
        {
            return default;
        }

        var words = fields.Text(value);
        if (LimbNames.Find(words) is { } limb)
        {
            return limb;
        }

        if (value is JsonValue.Text)
        {
            problems.Add(value, $"'{JsonFields.Short(words)}' stands here", "left foot, right foot, left hand or right hand");
        }

        return default;
    }

    private Choice Choice(JsonFields fields) => new(
        Count(fields, "bar"),
        Count(fields, "pass"),
        Figure(fields, "beat"),
        _music.Beats(fields, "start"),
        _music.Beats(fields, "length"),
        fields.Text("symbol"),
        _music.Name(fields, "soundingBass"),
        fields.Text("figure"),
        fields.List("strokes", v => StrokeAt(fields, v)),
        Object(fields.Take("clash"), Clash),
        Figure(fields, "dose"),
        Figure(fields, "closeRootClash"),
        fields.List("quarrels", v => Object(v, Quarrel)),
        fields.List("ringingOn", Note),
        fields.TakeUnlessNull("runnerUp") is { } runnerUp ? Object(runnerUp, RunnerUp) : null,
        fields.List("terms", v => Object(v, Term)),
        fields.TextOrNull("bound"))
    {
        Hearings = Count(fields, "hearings"),
    };

    private Stroke StrokeAt(JsonFields fields, JsonValue value)
    {
        if (_strokes.Count == 0)
        {
            problems.Add(value, "a stroke is named here", "nothing, as the arrangement has no strokes");
            return null!;
        }

        return _strokes[(int)fields.Whole(value, 0, _strokes.Count - 1)];
    }

    private ClashSplit Clash(JsonFields fields) => new(
        Figure(fields, "own"),
        Figure(fields, "fromBefore"),
        Figure(fields, "haze"),
        Figure(fields, "roughness"),
        Figure(fields, "contradiction"));

    private Quarrel Quarrel(JsonFields fields) => new(
        Bell(fields, "lowerMidi", "lowerName"),
        fields.Text("lowerPartial"),
        Frequency(fields, "lowerFrequency"),
        Bell(fields, "upperMidi", "upperName"),
        fields.Text("upperPartial"),
        Frequency(fields, "upperFrequency"),
        Figure(fields, "share"),
        Time(fields, "lasts"));

    private RunnerUp RunnerUp(JsonFields fields) => new(
        fields.Text("figure"),
        fields.List("notes", Note),
        Price(fields, "dearer"),
        fields.List("differences", v => Object(v, Term)));

    private PricedTerm Term(JsonFields fields) => new(fields.Text("term"), Price(fields, "thousandths"));

    private Totals Totals(JsonFields fields) => new(
        Price(fields, "price"),
        Figure(fields, "clashDose"),
        Figure(fields, "medianClash"),
        fields.List("bellsUsed", Note),
        fields.TakeUnlessNull("pedalsTo") is { } pedal ? Note(pedal) : null,
        Figure(fields, "rootLowest"),
        Time(fields, "heaviestFrom"),
        Count(fields, "heaviestStrokes"),
        fields.List("leftOut", fields.Text));

    private SearchStatus Status(JsonFields fields) => new(
        Price(fields, "price"),
        fields.WholeOrNull("bound", -LargestPrice, LargestPrice),
        Count(fields, "starts"));
}
