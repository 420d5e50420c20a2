using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>Writes the members of an arrangement file; small objects stand on one line, so that lists read as tables.</summary>
internal sealed class ArrangementJsonWriter
{
    private static readonly JsonWriterOptions Indented = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly Arrangement _arrangement;
    private readonly Utf8JsonWriter _json;
    private readonly Dictionary<Stroke, int> _places = [];

    private ArrangementJsonWriter(Arrangement arrangement, Utf8JsonWriter json)
    {
        (_arrangement, _json) = (arrangement, json);
        for (var i = 0; i < arrangement.Strokes.Count; i++)
        {
            _places.TryAdd(arrangement.Strokes[i], i);
        }
    }

    public static byte[] Bytes(Arrangement arrangement)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Indented))
        {
            new ArrangementJsonWriter(arrangement, json).Arrangement();
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
    }

    private void Arrangement()
    {
        _json.WriteStartObject();
        _json.WriteNumber("format", ArrangementJson.Format);
        _json.WriteString("title", _arrangement.Title);
        _json.WritePropertyName("tower");
        Tower(_json, _arrangement.Tower);
        _json.WriteString("sound", _arrangement.Sound);
        _json.WriteString("writtenKey", _arrangement.WrittenKey?.ToString());
        _json.WriteString("soundingKey", _arrangement.SoundingKey?.ToString());
        _json.WriteBoolean("tempoIsAssumed", _arrangement.TempoIsAssumed);
        _json.WriteLines("tempi", _arrangement.Tempi.Changes, Tempo);
        _json.WriteLines("bars", _arrangement.Bars, Bar);
        _json.WriteNumber("shift", _arrangement.Shift.Value);
        WriteNumberOrNull("tuneOctaves", _arrangement.TuneOctaves);
        _json.WriteLines("otherOctaves", _arrangement.OtherOctaves, JsonLayout.Write);
        JsonLayout.Write(_json, _arrangement.Layout);
        _json.WriteLines("strokes", _arrangement.Strokes, StrokeMembers);
        _json.WriteStartArray("choices");
        foreach (var choice in _arrangement.Choices)
        {
            Choice(choice);
        }

        _json.WriteEndArray();
        _json.WritePropertyName("totals");
        Totals(_arrangement.Totals);
        _json.WritePropertyName("status");
        _json.WriteOnOneLine(Status);
        Sentences("wishes", _arrangement.Wishes);
        _json.WriteNumbers("unheard", _arrangement.Unheard);
        _json.WriteEndObject();
    }

    private void WriteNumberOrNull(string name, int? number)
    {
        if (number is { } value)
        {
            _json.WriteNumber(name, value);
        }
        else
        {
            _json.WriteNull(name);
        }
    }

    internal static void Tower(Utf8JsonWriter json, TowerSummary tower)
    {
        json.WriteStartObject();
        json.WriteString("name", tower.Name);
        json.WriteNumber("bells", tower.Bells);
        json.WriteNote("lowest", tower.Lowest);
        json.WriteNote("highest", tower.Highest);
        json.WriteNotes("missing", tower.Missing);
        json.WriteNumber("measuredBells", tower.MeasuredBells);
        json.WriteNumber("transposition", tower.Transposition.Semitones);
        json.WriteEndObject();
    }

    private void Choice(Choice choice)
    {
        _json.WriteStartObject();
        _json.WriteNumber("bar", choice.Bar);
        _json.WriteNumber("pass", choice.Pass);
        _json.WriteNumber("beat", choice.Beat);
        _json.WriteString("start", choice.Start.ToString());
        _json.WriteString("length", choice.Length.ToString());
        _json.WriteString("symbol", choice.Symbol);
        _json.WriteString("soundingBass", choice.SoundingBass?.ToString());
        _json.WriteString("figure", choice.Figure);
        _json.WriteNumbers("strokes", choice.Strokes.Select(PlaceOf).ToItems());
        _json.WritePropertyName("clash");
        _json.WriteOnOneLine(json => Clash(json, choice.Clash));
        _json.WriteNumber("dose", choice.Dose);
        _json.WriteNumber("closeRootClash", choice.CloseRootClash);
        _json.WriteLines("quarrels", choice.Quarrels, JsonQuarrel.Write);
        _json.WriteNotes("ringingOn", choice.RingingOn);
        _json.WriteLines("alternatives", choice.Alternatives, JsonReasons.Write);
        _json.WritePropertyName("former");
        JsonReasons.Write(_json, choice.Former);
        _json.WriteLines("terms", choice.Terms, JsonReasons.Write);
        _json.WritePropertyName("barred");
        JsonReasons.Write(_json, choice.Barred);
        _json.WriteNumber("hearings", choice.Hearings);
        _json.WriteString("toneNames", string.Join(' ', choice.ToneNames));
        if (choice.LeftRinging.Count > 0)
        {
            _json.WriteString("leftRinging", string.Join(' ', choice.LeftRinging));
        }

        _json.WriteEndObject();
    }

    private int PlaceOf(Stroke stroke) => _places.TryGetValue(stroke, out var place)
        ? place
        : throw new ArgumentException($"a choice has the stroke {stroke}, which is none of the arrangement's", nameof(stroke));

    private void Totals(Totals totals)
    {
        _json.WriteStartObject();
        _json.WriteNumber("price", totals.Price);
        _json.WriteNumber("clashDose", totals.ClashDose);
        _json.WriteNumber("medianClash", totals.MedianClash);
        _json.WriteNotes("bellsUsed", totals.BellsUsed);
        _json.WriteNote("pedalsTo", totals.PedalsTo);
        _json.WriteNumber("rootLowest", totals.RootLowest);
        _json.WriteNumber("heaviestFrom", totals.HeaviestFrom.Value);
        _json.WriteNumber("heaviestStrokes", totals.HeaviestStrokes);
        _json.WriteNumber("tuneDose", totals.TuneDose);
        _json.WriteNumber("carry", totals.Carry.Value);
        _json.WriteNumber("carryAtEqualTouch", totals.CarryAtEqualTouch.Value);
        _json.WriteNumber("brightness", totals.Brightness.Value);
        _json.WritePropertyName("strongBeats");
        _json.WriteOnOneLine(json => JsonReasons.Write(json, totals.StrongBeats));
        _json.WriteNumber("closeRootDose", totals.CloseRootDose);
        _json.WriteNumber("closeRootStrokes", totals.CloseRootStrokes);
        _json.WriteNumber("plainHandDose", totals.PlainHandDose);
        _json.WriteNumber("plainHandStrokes", totals.PlainHandStrokes);
        _json.WritePropertyName("fatigue");
        _json.WriteOnOneLine(json => JsonFatigue.Write(json, totals.Fatigue));
        _json.WritePropertyName("softTune");
        _json.WriteOnOneLine(json =>
        {
            json.WriteNumber("count", totals.SoftTune.Count);
            json.WriteNumber("under", totals.SoftTune.Under.Value);
            json.WriteNumber("at", totals.SoftTune.At.Value);
        });
        Sentences("leftOut", totals.LeftOut);
        _json.WriteEndObject();
    }

    private void Sentences(string name, Items<string> sentences)
    {
        _json.WriteStartArray(name);
        foreach (var sentence in sentences)
        {
            _json.WriteStringValue(sentence);
        }

        _json.WriteEndArray();
    }

    private void Status(Utf8JsonWriter json)
    {
        json.WriteNumber("price", _arrangement.Status.Price);
        if (_arrangement.Status.Bound is { } bound)
        {
            json.WriteNumber("bound", bound);
        }
        else
        {
            json.WriteNull("bound");
        }

        json.WriteNumber("starts", _arrangement.Status.Starts);
        if (_arrangement.Status.WasCutShort)
        {
            json.WriteBoolean("timeLimitReached", true);
        }

    }

    internal static void Tempo(Utf8JsonWriter json, TempoChange change)
    {
        json.WriteString("from", change.From.ToString());
        json.WriteString("unit", change.Tempo.Unit.ToString());
        json.WriteNumber("perMinute", change.Tempo.PerMinute);
    }

    internal static void Bar(Utf8JsonWriter json, ArrangedBar bar)
    {
        json.WriteNumber("number", bar.Number);
        json.WriteNumber("pass", bar.Pass);
        json.WriteString("start", bar.Start.ToString());
        json.WriteString("length", bar.Length.ToString());
        json.WriteString("meter", bar.Meter.ToString());
        json.WriteNumber("written", bar.Written);
        json.WriteString("offset", bar.Offset.ToString());
        json.WriteBoolean("endsSection", bar.EndsSection);
        json.WriteString("key", bar.Key?.ToString());
        json.WriteString("fermatas", string.Join(' ', bar.Fermatas));
    }

    internal static void StrokeMembers(Utf8JsonWriter json, Stroke stroke)
    {
        json.WriteNoteMembers(stroke.Note);
        json.WriteString("limb", LimbNames.Of(stroke.Limb));
        json.WriteString("beat", stroke.Beat.ToString());
        json.WriteNumber("lead", stroke.Lead.Value);
        json.WriteNumber("at", stroke.At.Value);
        json.WriteNumber("level", stroke.Level.Value);
        json.WriteBoolean("tune", stroke.IsTune);
        json.WriteString("sheetName", stroke.Sheet?.Name.ToString());
        json.WriteString("sheetLength", stroke.Sheet?.Length.ToString());
    }

    internal static void Clash(Utf8JsonWriter json, ClashSplit clash)
    {
        json.WriteNumber("own", clash.Own);
        json.WriteNumber("fromBefore", clash.FromBefore);
        json.WriteNumber("haze", clash.Haze);
        json.WriteNumber("tune", clash.Tune);
        json.WriteNumber("roughness", clash.Roughness);
        json.WriteNumber("contradiction", clash.Contradiction);
    }
}
