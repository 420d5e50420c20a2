using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Writing.Json;

/// <summary>Makes the choices of an arrangement, whose strokes are known already.</summary>
internal sealed class ChoiceJsonReader : JsonPieces
{
    private readonly Items<Stroke> _strokes;

    public ChoiceJsonReader(JsonProblems problems, Transposition transposition, Items<Stroke> strokes)
        : base(problems)
    {
        Transposition = transposition;
        _strokes = strokes;
    }

    public Choice Choice(JsonFields fields) => new(
        Count(fields, "bar"),
        Count(fields, "pass"),
        Figure(fields, "beat"),
        Music.Beats(fields, "start"),
        Music.Beats(fields, "length"),
        fields.Text("symbol"),
        Music.Name(fields, "soundingBass"),
        fields.Text("figure"),
        fields.List("strokes", v => StrokeAt(fields, v)),
        Object(fields.Take("clash"), Clash),
        Figure(fields, "dose"),
        Figure(fields, "closeRootClash"),
        fields.List("quarrels", v => Object(v, Quarrel)),
        fields.List("ringingOn", Note),
        fields.List("alternatives", v => Object(v, Alternative)),
        fields.List("terms", v => Object(v, Term)),
        fields.TakeUnlessNull("barred") is { } barred ? Object(barred, Barred) : null)
    {
        Hearings = Count(fields, "hearings"),
        Former = fields.TakeUnlessNull("former") is { } former ? Object(former, Former) : null,
        ToneNames = Music.Names(fields, "toneNames"),
        LeftRinging = fields.Peek("leftRinging") is null ? [] : Music.Names(fields, "leftRinging"),
    };

    private Stroke StrokeAt(JsonFields fields, JsonValue value)
    {
        if (_strokes.Count == 0)
        {
            Problems.Add(value, "a stroke is named here", "nothing, as the arrangement has no strokes");
            return null!;
        }

        return _strokes[(int)fields.Whole(value, 0, _strokes.Count - 1)];
    }

    private ClashSplit Clash(JsonFields fields) => new(
        Figure(fields, "own"),
        Figure(fields, "fromBefore"),
        Figure(fields, "haze"),
        Figure(fields, "roughness"),
        Figure(fields, "contradiction"))
    {
        Tune = Figure(fields, "tune"),
    };

    private Quarrel Quarrel(JsonFields fields) => fields.Peek("lowerMidi") is null ? ChordQuarrel(fields) : PairQuarrel(fields);

    private ChordQuarrel ChordQuarrel(JsonFields fields) => new(
        Bell(fields, "midi", "name"),
        fields.Text("partial"),
        Frequency(fields, "frequency"),
        PitchClass.Of((int)fields.Whole("sounds", 0, 11)),
        PitchClass.Of((int)fields.Whole("beside", 0, 11)),
        Figure(fields, "share"),
        Time(fields, "lasts"));

    private PairQuarrel PairQuarrel(JsonFields fields) => new(
        Bell(fields, "lowerMidi", "lowerName"),
        fields.Text("lowerPartial"),
        Frequency(fields, "lowerFrequency"),
        Bell(fields, "upperMidi", "upperName"),
        fields.Text("upperPartial"),
        Frequency(fields, "upperFrequency"),
        Figure(fields, "share"),
        Time(fields, "lasts"));

    private Alternative Alternative(JsonFields fields) => new(
        fields.Text("figure"),
        fields.List("notes", Note),
        Price(fields, "costsMore"),
        fields.List("differences", v => Object(v, Term)));

    private BarredVoicing Barred(JsonFields fields) => new(
        fields.Text("figure"),
        fields.List("notes", Note),
        Price(fields, "costsLess"),
        fields.Text("rule"));

    private FormerChord Former(JsonFields fields) => new(
        fields.List("notes", Note),
        fields.Truth("kept"),
        fields.TakeUnlessNull("costsMore") is { } costsMore ? Price(fields, costsMore) : null,
        fields.List("differences", v => Object(v, Term)))
    {
        Obstacle = fields.TakeUnlessNull("obstacle") is { } obstacle ? Object(obstacle, Obstacle) : null,
    };

    private Obstacle Obstacle(JsonFields fields) => new(
        Named(fields, "kind", ObstacleNames.Find, string.Join(", ", Enum.GetValues<ObstacleKind>().Select(ObstacleNames.Of))),
        fields.List("notes", Note));

    private PricedTerm Term(JsonFields fields) => new(fields.Text("term"), Price(fields, "thousandths"));
}
