using System.Text.Json;
using Revoicer.Audits;

namespace Revoicer.Writing.Json;

/// <summary>An audit as JSON (RFC 8259), described in docs/files.md under "Audits".</summary>
public static class AuditJson
{
    /// <summary>The version of the form; it grows when a member is taken away or means something else.</summary>
    public const int Format = 1;

    /// <summary>The bytes: UTF-8 without byte order mark, indented, lines ending in \n.</summary>
    public static byte[] Write(AuditReport audit) => JsonForm.File(audit, Write);

    private static void Write(Utf8JsonWriter json, AuditReport audit)
    {
        json.WriteNumber("format", Format);
        json.WriteString("title", audit.Title);
        json.WriteObject("tower", audit.Tower, ArrangementJsonWriter.Tower);
        json.WriteString("sound", audit.Sound);
        json.WriteString("writtenKey", audit.WrittenKey?.ToString());
        json.WriteString("soundingKey", audit.SoundingKey?.ToString());
        json.WriteBoolean("tempoIsAssumed", audit.TempoIsAssumed);
        json.WriteLines("tempi", audit.Tempi.Changes, ArrangementJsonWriter.Tempo);
        json.WriteNumber("shift", audit.Shift.Value);
        json.WriteBoolean("playable", audit.IsPlayable);
        json.WriteBoolean("limbsAreGiven", audit.LimbsAreGiven);
        json.WriteLine("totals", audit.Totals, Totals);
        json.WriteNotes("bellsUsed", audit.Totals.BellsUsed);
        json.WriteLine("fatigue", audit.Totals.Fatigue, JsonTotals.Write);
        json.WriteLines("missingBells", audit.MissingBells, (line, missing) =>
        {
            line.WriteNoteMembers(missing.Note);
            line.WriteNote("nearest", missing.Nearest);
        });
        json.WriteObjects("unplayable", audit.Unplayable, Unplayable);
        json.WriteLines("bars", audit.Bars.Zip(audit.BarClashes), (line, bar) =>
        {
            ArrangementJsonWriter.Bar(line, bar.First);
            line.WriteNumber("strokes", bar.Second.Strokes);
            line.WriteNumber("clash", bar.Second.Clash.Avoidable);
            line.WriteNumber("clashWithTune", bar.Second.Clash.Whole);
            line.WriteNumber("roughness", bar.Second.Clash.Roughness);
            line.WriteNumber("contradiction", bar.Second.Clash.Contradiction);
        });
        var places = new StrokePlaces(audit.Strokes);
        json.WriteObjects("chords", audit.Chords, (_, chord) => Chord(json, chord, places));
        json.WriteLines("strokes", audit.Strokes, ArrangementJsonWriter.Stroke);
        json.WriteTexts("told", audit.Told);
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
    }

    private static void Chord(Utf8JsonWriter json, AuditedChord chord, StrokePlaces places)
    {
        json.WriteNumber("bar", chord.Bar);
        json.WriteNumber("pass", chord.Pass);
        json.WriteNumber("beat", chord.Beat);
        json.WriteString("start", chord.Start.ToString());
        json.WriteString("length", chord.Length.ToString());
        json.WriteString("symbol", chord.Symbol);
        json.WriteString("toneNames", string.Join(' ', chord.ToneNames));
        json.WriteNumbers("strokes", places.Of(chord.Strokes));
        json.WriteLine("clash", chord.Clash, ArrangementJsonWriter.Clash);
        json.WriteNumber("dose", chord.Dose);
        json.WriteLines("quarrels", chord.Quarrels, JsonQuarrel.Write);
    }
}
