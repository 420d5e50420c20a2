using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>
/// Makes an arrangement of the members of a file. What is wrong goes to the problems, and reading goes on with a value
/// that is never used, so that all problems are found at once.
/// </summary>
internal static class ArrangementJsonReader
{
    public static Arrangement Arrangement(JsonFields fields)
    {
        fields.Whole("format", ArrangementJson.Format, ArrangementJson.Format);

        // Notes are checked against the tower's transposition, choices against the strokes: so these come first.
        var tower = fields.Object("tower", Tower);
        var transposition = tower?.Transposition ?? default;
        var strokes = fields.Objects("strokes", f => Stroke(f, transposition));
        var choices = new ChoiceJsonReader(transposition, strokes);
        return new Arrangement(
            fields.Text("title"),
            tower!,
            fields.Text("sound"),
            fields.Key("writtenKey"),
            fields.Key("soundingKey"),
            new TempoMap(Tempi(fields)),
            fields.Truth("tempoIsAssumed"),
            fields.SomeObjects("bars", Bar),
            fields.Time("shift"),
            strokes,
            fields.Objects("choices", choices.Choice),
            fields.Object("totals", Totals),
            fields.Object("status", Status))
        {
            TuneOctaves = (int?)fields.WholeOrNull("tuneOctaves", -9, 9),
            OtherOctaves = fields.Objects("otherOctaves", OtherOctave),
            Layout = fields.ObjectOrNull("layout", Layout),
            Wishes = fields.List("wishes", fields.Text),
            Unheard = fields.List("unheard", v => (int)fields.Whole(v, 0, JsonRanges.MostOfAnything)),
        };
    }

    private static OtherOctave OtherOctave(JsonFields fields) =>
        new((int)fields.Whole("octaves", -9, 9), fields.PriceOrNull("costsMore"), fields.Truth("exact"));

    private static ChosenLayout Layout(JsonFields fields) => new(
        fields.Named("tune", TuneLayoutNames.Find, "above or below"),
        fields.Price("price"))
    {
        Other = fields.ObjectOrNull("other", f => new OtherLayout(f.Price("price"), f.Figure("clashDose"), f.Figure("tuneDose"), f.Figure("medianClash"))),
        Obstacle = fields.TextOrNull("obstacle"),
    };

    private static TowerSummary Tower(JsonFields fields) => new(
        fields.Text("name"),
        fields.Count("bells"),
        fields.Object("lowest", JsonMusic.Note),
        fields.Object("highest", JsonMusic.Note),
        fields.Objects("missing", JsonMusic.Note),
        fields.Count("measuredBells"),
        new Transposition((int)fields.Whole("transposition", -127, 127)));

    private static Items<TempoChange> Tempi(JsonFields fields)
    {
        // In order of place, the first at zero: the tempo map's own promise.
        Beats? last = null;
        return fields.SomeObjects("tempi", f =>
        {
            var where = f.Peek("from");
            var change = new TempoChange(f.Beats("from"), f.Tempo());
            if (where is { } from && (last is { } before ? change.From <= before : change.From != Beats.Zero))
            {
                f.Refuse(from, $"a tempo from {change.From}", last is null ? "the first tempo from 0" : $"a place after {last}");
            }

            last = change.From;
            return change;
        });
    }

    private static ArrangedBar Bar(JsonFields fields)
    {
        var where = fields.Peek("length");
        var bar = new ArrangedBar(
            fields.Count("number"),
            fields.Count("pass"),
            fields.Beats("start"),
            fields.Beats("length"),
            fields.Meter("meter"))
        {
            Written = fields.Count("written"),
            Offset = fields.Beats("offset"),
            EndsSection = fields.Truth("endsSection"),
            Key = fields.Key("key"),
            Fermatas = fields.Places("fermatas"),
        };
        if (where is { ValueKind: JsonValueKind.String } length && bar.Length <= Beats.Zero)
        {
            fields.Refuse(length, $"a bar of {bar.Length} quarter notes", "a bar that lasts");
        }

        return bar;
    }

    private static Stroke Stroke(JsonFields fields, Transposition transposition) => new(
        fields.Bell(transposition),
        fields.Named("limb", LimbNames.Find, "left foot, right foot, left hand or right hand"),
        fields.Beats("beat"),
        fields.Lead("lead"),
        fields.Time("at"),
        fields.Level("level"))
    {
        IsTune = fields.Truth("tune"),
        Sheet = fields.Sheet("sheetName", "sheetLength"),
    };

    private static Totals Totals(JsonFields fields) => new(
        fields.Price("price"),
        fields.Figure("clashDose"),
        fields.Figure("medianClash"),
        fields.Objects("bellsUsed", JsonMusic.Note),
        fields.TakeUnlessNull("pedalsTo") is { } pedal ? fields.Object(pedal, JsonMusic.Note) : null,
        fields.Figure("rootLowest"),
        fields.Time("heaviestFrom"),
        fields.Count("heaviestStrokes"),
        fields.List("leftOut", fields.Text))
    {
        TuneDose = fields.Figure("tuneDose"),
        Fatigue = fields.Object("fatigue", Fatigue),
        SoftTune = fields.Object("softTune", f => new SoftTune(f.Count("count"), new Decibels(f.Figure("under")), f.Time("at"))),
        Carry = new Decibels(fields.Figure("carry")),
        CarryAtEqualTouch = new Decibels(fields.Figure("carryAtEqualTouch")),
        Brightness = fields.Frequency("brightness"),
        StrongBeats = fields.Object("strongBeats", f => new StrongBeats(f.Count("withBass"), f.Count("longEnough"), f.Count("all"))),
        CloseRootDose = fields.Figure("closeRootDose"),
        CloseRootStrokes = fields.Count("closeRootStrokes"),
        PlainHandDose = fields.Figure("plainHandDose"),
        PlainHandStrokes = fields.Count("plainHandStrokes"),
    };

    private static Fatigue Fatigue(JsonFields fields) => new(
        fields.Figure("level"),
        fields.Time("levelAt"),
        fields.Figure("tires"),
        fields.Figure("tooMuch"),
        fields.Count("row"),
        fields.Time("rowAt"),
        fields.Figure("rowTires"));

    private static SearchStatus Status(JsonFields fields) => new(
        fields.Price("price"),
        fields.PriceOrNull("bound"),
        fields.Count("starts"))
    {
        WasCutShort = fields.Peek("timeLimitReached") is not null && fields.Truth("timeLimitReached"),
    };
}
