using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using Revoicer.Audits;

namespace Revoicer.Writing.Json;

/// <summary>An audit as JSON (RFC 8259), described in docs/files.md under "Audits".</summary>
public static class AuditJson
{
    /// <summary>The version of the form; it grows when a member is taken away or means something else.</summary>
    public const int Format = 1;

    private static readonly JsonWriterOptions Indented = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The bytes: UTF-8 without byte order mark, indented, lines ending in \n.</summary>
    public static byte[] Write(AuditReport audit)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Indented))
        {
            Write(json, audit);
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
    }

    private static void Write(Utf8JsonWriter json, AuditReport audit)
    {
        json.WriteStartObject();
        json.WriteNumber("format", Format);
        json.WriteString("title", audit.Title);
        json.WritePropertyName("tower");
        ArrangementJsonWriter.Tower(json, audit.Tower);
        json.WriteString("sound", audit.Sound);
        json.WriteString("writtenKey", audit.WrittenKey?.ToString());
        json.WriteString("soundingKey", audit.SoundingKey?.ToString());
        json.WriteBoolean("tempoIsAssumed", audit.TempoIsAssumed);
        json.WriteLines("tempi", audit.Tempi.Changes, ArrangementJsonWriter.Tempo);
        json.WriteNumber("shift", audit.Shift.Value);
        json.WriteBoolean("playable", audit.IsPlayable);
        json.WriteBoolean("limbsAreGiven", audit.LimbsAreGiven);
        json.WritePropertyName("totals");
        json.WriteOnOneLine(line => Totals(line, audit.Totals));
        json.WriteNotes("bellsUsed", audit.Totals.BellsUsed);
        json.WritePropertyName("fatigue");
        json.WriteOnOneLine(line => JsonFatigue.Write(line, audit.Totals.Fatigue));
        json.WriteLines("missingBells", audit.MissingBells, (line, missing) =>
        {
            line.WriteNoteMembers(missing.Note);
            line.WriteNote("nearest", missing.Nearest);
        });
        json.WriteStartArray("unplayable");
        foreach (var place in audit.Unplayable)
        {
            Unplayable(json, place);
        }

        json.WriteEndArray();
        Bars(json, audit);
        Chords(json, audit);
        json.WriteLines("strokes", audit.Strokes, ArrangementJsonWriter.StrokeMembers);
        json.WriteStartArray("told");
        foreach (var sentence in audit.Told)
        {
            json.WriteStringValue(sentence);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Totals(Utf8JsonWriter json, AuditTotals totals)
    {
        json.WriteNumber("clashDose", totals.ClashDose);
        json.WriteNumber("tuneDose", totals.TuneDose);
        json.WriteNumber("medianClash", totals.MedianClash);
        json.WriteNumber("medianWithTune", totals.MedianWithTune);
        json.WriteNumber("carry", totals.Carry.Value);
        json.WriteNumber("brightness", totals.Brightness.Value);
        json.WriteNumber("heaviestFrom", totals.HeaviestFrom.Value);
        json.WriteNumber("heaviestStrokes", totals.HeaviestStrokes);
    }

    private static void Unplayable(Utf8JsonWriter json, UnplayablePlace place)
    {
        json.WriteStartObject();
        json.WriteNumber("bar", place.Bar);
        json.WriteNumber("pass", place.Pass);
        json.WriteNumber("beat", place.Beat);
        json.WriteString("place", place.Place.ToString());
        json.WriteNotes("missing", place.Missing);
        json.WriteLines("broken", place.Broken, (line, broken) =>
        {
            line.WriteString("limit", broken.Limit);
            line.WriteString("sentence", broken.Sentence);
        });
        json.WriteString("remedy", place.Remedy);
        json.WriteEndObject();
    }

    private static void Bars(Utf8JsonWriter json, AuditReport audit)
    {
        var bars = audit.Bars.Zip(audit.BarClashes);
        json.WriteLines("bars", Values.Items.ToItems(bars), (line, bar) =>
        {
            ArrangementJsonWriter.Bar(line, bar.First);
            line.WriteNumber("strokes", bar.Second.Strokes);
            line.WriteNumber("clash", bar.Second.Clash.Avoidable);
            line.WriteNumber("clashWithTune", bar.Second.Clash.Whole);
            line.WriteNumber("roughness", bar.Second.Clash.Roughness);
            line.WriteNumber("contradiction", bar.Second.Clash.Contradiction);
        });
    }

    private static void Chords(Utf8JsonWriter json, AuditReport audit)
    {
        var places = new Dictionary<Playing.Stroke, int>();
        for (var i = 0; i < audit.Strokes.Count; i++)
        {
            places.TryAdd(audit.Strokes[i], i);
        }

        json.WriteStartArray("chords");
        foreach (var chord in audit.Chords)
        {
            json.WriteStartObject();
            json.WriteNumber("bar", chord.Bar);
            json.WriteNumber("pass", chord.Pass);
            json.WriteNumber("beat", chord.Beat);
            json.WriteString("start", chord.Start.ToString());
            json.WriteString("length", chord.Length.ToString());
            json.WriteString("symbol", chord.Symbol);
            json.WriteString("toneNames", string.Join(' ', chord.ToneNames));
            json.WritePropertyName("strokes");
            json.WriteRawValue($"[{string.Join(',', chord.Strokes.Select(s => places[s]))}]");
            json.WritePropertyName("clash");
            json.WriteOnOneLine(line => ArrangementJsonWriter.Clash(line, chord.Clash));
            json.WriteNumber("dose", chord.Dose);
            json.WriteLines("quarrels", chord.Quarrels, JsonQuarrel.Write);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
