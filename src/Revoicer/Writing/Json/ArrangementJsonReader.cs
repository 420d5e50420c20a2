using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>
/// Makes an arrangement of the members of a file. What is wrong goes to the problems, and reading goes on with a value
/// that is never used, so that all problems are found at once.
/// </summary>
internal sealed class ArrangementJsonReader(JsonProblems problems) : JsonPieces(problems)
{
    public Arrangement Arrangement(JsonFields fields)
    {
        fields.Whole("format", ArrangementJson.Format, ArrangementJson.Format);

        // Notes are checked against the tower's transposition, choices against the strokes: so these come first.
        var tower = Object(fields.Take("tower"), Tower);
        Transposition = tower?.Transposition ?? default;
        var strokes = fields.List("strokes", v => Object(v, Stroke));
        var choices = new ChoiceJsonReader(Problems, Transposition, strokes);
        var arrangement = new Arrangement(
            fields.Text("title"),
            tower!,
            fields.Text("sound"),
            Music.Key(fields, "writtenKey"),
            Music.Key(fields, "soundingKey"),
            new TempoMap(Tempi(fields)),
            fields.Truth("tempoIsAssumed"),
            NotEmpty(fields, "bars", Bar),
            Time(fields, "shift"),
            strokes,
            fields.List("choices", v => Object(v, choices.Choice)),
            Object(fields.Take("totals"), Totals),
            Object(fields.Take("status"), Status))
        {
            TuneOctaves = (int?)fields.WholeOrNull("tuneOctaves", -9, 9),
            OtherOctaves = fields.List("otherOctaves", v => Object(v, OtherOctave)),
            Layout = fields.TakeUnlessNull("layout") is { } layout ? Object(layout, Layout) : null,
            Wishes = fields.List("wishes", fields.Text),
            Unheard = fields.List("unheard", v => (int)fields.Whole(v, 0, MostOfAnything)),
        };
        fields.Done();
        return arrangement;
    }

    private static OtherOctave OtherOctave(JsonFields fields) => new(
        (int)fields.Whole("octaves", -9, 9), fields.WholeOrNull("costsMore", -LargestPrice, LargestPrice), fields.Truth("exact"));

    private ChosenLayout Layout(JsonFields fields) => new(
        Named(fields, "tune", TuneLayoutNames.Find, "above or below"),
        Price(fields, "price"))
    {
        Other = fields.TakeUnlessNull("other") is { } other
            ? Object(other, f => new OtherLayout(Price(f, "price"), Figure(f, "clashDose"), Figure(f, "tuneDose"), Figure(f, "medianClash")))
            : null,
        Obstacle = fields.TextOrNull("obstacle"),
    };

    private Items<T> NotEmpty<T>(JsonFields fields, string name, Func<JsonFields, T> read)
    {
        var list = fields.Take(name);
        if (list is JsonValue.List { Elements.Count: > 0 } found)
        {
            return found.Elements.Select(v => Object(v, read)).ToItems();
        }

        if (list is not null)
        {
            Problems.Add(list, list is JsonValue.List ? "an empty list stands here" : $"{list.Kind} stands here", "a list of at least one object");
        }

        return [];
    }

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
            var change = new TempoChange(Music.Beats(f, "from"), Music.Tempo(f));
            if (where is not null && (last is { } before ? change.From <= before : change.From != Beats.Zero))
            {
                Problems.Add(where, $"a tempo from {change.From}", last is null ? "the first tempo from 0" : $"a place after {last}");
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
            Music.Beats(fields, "start"),
            Music.Beats(fields, "length"),
            Music.Meter(fields, "meter"))
        {
            Written = Count(fields, "written"),
            Offset = Music.Beats(fields, "offset"),
            EndsSection = fields.Truth("endsSection"),
            Key = Music.Key(fields, "key"),
            Fermatas = Music.Places(fields, "fermatas"),
        };
        if (where is JsonValue.Text && bar.Length <= Beats.Zero)
        {
            Problems.Add(where, $"a bar of {bar.Length} quarter notes", "a bar that lasts");
        }

        return bar;
    }

    private Stroke Stroke(JsonFields fields) => new(
        Bell(fields, "midi", "name"),
        Named(fields, "limb", LimbNames.Find, "left foot, right foot, left hand or right hand"),
        Music.Beats(fields, "beat"),
        new Seconds(fields.Number("lead", 0, LongestLead)),
        Time(fields, "at"),
        new Decibels(fields.Number("level", -LargestLevel, LargestLevel)))
    {
        IsTune = fields.Truth("tune"),
        Sheet = Music.Sheet(fields, "sheetName", "sheetLength"),
    };

    private Totals Totals(JsonFields fields) => new(
        Price(fields, "price"),
        Figure(fields, "clashDose"),
        Figure(fields, "medianClash"),
        fields.List("bellsUsed", Note),
        fields.TakeUnlessNull("pedalsTo") is { } pedal ? Note(pedal) : null,
        Figure(fields, "rootLowest"),
        Time(fields, "heaviestFrom"),
        Count(fields, "heaviestStrokes"),
        fields.List("leftOut", fields.Text))
    {
        TuneDose = Figure(fields, "tuneDose"),
        Fatigue = Object(fields.Take("fatigue"), Fatigue),
        SoftTune = Object(fields.Take("softTune"), f => new SoftTune(Count(f, "count"), new Decibels(Figure(f, "under")), Time(f, "at"))),
        Carry = new Decibels(Figure(fields, "carry")),
        CarryAtEqualTouch = new Decibels(Figure(fields, "carryAtEqualTouch")),
        Brightness = Frequency(fields, "brightness"),
        StrongBeats = Object(fields.Take("strongBeats"), f => new StrongBeats(Count(f, "withBass"), Count(f, "longEnough"), Count(f, "all"))),
        CloseRootDose = Figure(fields, "closeRootDose"),
        CloseRootStrokes = Count(fields, "closeRootStrokes"),
        PlainHandDose = Figure(fields, "plainHandDose"),
        PlainHandStrokes = Count(fields, "plainHandStrokes"),
    };

    private static Fatigue Fatigue(JsonFields fields) => new(
        Figure(fields, "level"),
        Time(fields, "levelAt"),
        Figure(fields, "tires"),
        Figure(fields, "tooMuch"),
        Count(fields, "row"),
        Time(fields, "rowAt"),
        Figure(fields, "rowTires"));

    private SearchStatus Status(JsonFields fields) => new(
        Price(fields, "price"),
        fields.WholeOrNull("bound", -LargestPrice, LargestPrice),
        Count(fields, "starts"))
    {
        WasCutShort = fields.Peek("timeLimitReached") is not null && fields.Truth("timeLimitReached"),
    };
}
