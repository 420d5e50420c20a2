using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Writing.Json;

/// <summary>Makes the choices of an arrangement.</summary>
/// <param name="transposition">The tower's, against which notes are checked.</param>
/// <param name="strokes">The strokes of the arrangement.</param>
internal sealed class ChoiceJsonReader(Transposition transposition, Items<Stroke> strokes)
{
    public Choice Choice(JsonFields fields) => new(
        fields.Count("bar"),
        fields.Count("pass"),
        fields.Figure("beat"),
        fields.Beats("start"),
        fields.Beats("length"),
        fields.Text("symbol"),
        fields.Name("soundingBass"),
        fields.Text("figure"),
        fields.List("strokes", v => StrokeAt(fields, v)),
        fields.Object("clash", Clash),
        fields.Figure("dose"),
        fields.Figure("closeRootClash"),
        fields.Objects("quarrels", Quarrel),
        fields.Objects("ringingOn", JsonMusic.Note),
        fields.Objects("alternatives", Alternative),
        fields.Objects("terms", Term),
        fields.ObjectOrNull("barred", Barred))
    {
        Hearings = fields.Count("hearings"),
        Former = fields.ObjectOrNull("former", Former),
        ToneNames = fields.Names("toneNames"),
        LeftRinging = fields.Peek("leftRinging") is null ? [] : fields.Names("leftRinging"),
    };

    private Stroke StrokeAt(JsonFields fields, JsonElement value)
    {
        if (strokes.Count == 0)
        {
            fields.Refuse(value, "a stroke is named here", "nothing, as the arrangement has no strokes");
            return null!;
        }

        return strokes[(int)fields.Whole(value, 0, strokes.Count - 1)];
    }

    private static ClashSplit Clash(JsonFields fields) => new(
        fields.Figure("own"),
        fields.Figure("fromBefore"),
        fields.Figure("haze"),
        fields.Figure("roughness"),
        fields.Figure("contradiction"))
    {
        Tune = fields.Figure("tune"),
    };

    private Quarrel Quarrel(JsonFields fields) => fields.Peek("lowerMidi") is null ? ChordQuarrel(fields) : PairQuarrel(fields);

    private ChordQuarrel ChordQuarrel(JsonFields fields) => new(
        fields.Bell(transposition),
        fields.Text("partial"),
        fields.Frequency("frequency"),
        PitchClass.Of((int)fields.Whole("sounds", 0, 11)),
        PitchClass.Of((int)fields.Whole("beside", 0, 11)),
        fields.Figure("share"),
        fields.Time("lasts"));

    private PairQuarrel PairQuarrel(JsonFields fields) => new(
        fields.Bell(transposition, "lowerMidi", "lowerName"),
        fields.Text("lowerPartial"),
        fields.Frequency("lowerFrequency"),
        fields.Bell(transposition, "upperMidi", "upperName"),
        fields.Text("upperPartial"),
        fields.Frequency("upperFrequency"),
        fields.Figure("share"),
        fields.Time("lasts"));

    private static Alternative Alternative(JsonFields fields) => new(
        fields.Text("figure"),
        fields.Objects("notes", JsonMusic.Note),
        fields.Price("costsMore"),
        fields.Objects("differences", Term));

    private static BarredVoicing Barred(JsonFields fields) => new(
        fields.Text("figure"),
        fields.Objects("notes", JsonMusic.Note),
        fields.Price("costsLess"),
        fields.Text("rule"));

    private static FormerChord Former(JsonFields fields) => new(
        fields.Objects("notes", JsonMusic.Note),
        fields.Truth("kept"),
        fields.PriceOrNull("costsMore"),
        fields.Objects("differences", Term))
    {
        Obstacle = fields.ObjectOrNull("obstacle", Obstacle),
    };

    private static Obstacle Obstacle(JsonFields fields) => new(
        fields.Named("kind", ObstacleNames.Find, string.Join(", ", Enum.GetValues<ObstacleKind>().Select(ObstacleNames.Of))),
        fields.Objects("notes", JsonMusic.Note));

    private static PricedTerm Term(JsonFields fields) => new(fields.Text("term"), fields.Price("thousandths"));
}
