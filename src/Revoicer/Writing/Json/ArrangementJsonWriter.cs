using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>Writes the members of an arrangement file; some of them stand in other files too.</summary>
/// <param name="strokes">Where each of the arrangement's strokes stands in its list.</param>
internal sealed class ArrangementJsonWriter(StrokePlaces strokes)
{
    public void Arrangement(Utf8JsonWriter json, Arrangement arrangement)
    {
        json.WriteNumber("format", ArrangementJson.Format);
        json.WriteString("title", arrangement.Title);
        json.WriteObject("tower", arrangement.Tower, Tower);
        json.WriteString("sound", arrangement.Sound);
        json.WriteString("writtenKey", arrangement.WrittenKey?.ToString());
        json.WriteString("soundingKey", arrangement.SoundingKey?.ToString());
        json.WriteBoolean("tempoIsAssumed", arrangement.TempoIsAssumed);
        json.WriteLines("tempi", arrangement.Tempi.Changes, Tempo);
        json.WriteLines("bars", arrangement.Bars, Bar);
        json.WriteNumber("shift", arrangement.Shift.Value);
        json.WriteNumber("tuneOctaves", arrangement.TuneOctaves);
        json.WriteLines("otherOctaves", arrangement.OtherOctaves, JsonLayout.Write);
        json.WriteObject("layout", arrangement.Layout, JsonLayout.Write);
        json.WriteLines("strokes", arrangement.Strokes, Stroke);
        json.WriteObjects("choices", arrangement.Choices, Choice);
        json.WriteObject("totals", arrangement.Totals, JsonTotals.Write);
        json.WriteLine("status", arrangement.Status, Status);
        json.WriteTexts("wishes", arrangement.Wishes);
        json.WriteNumbers("unheard", arrangement.Unheard);
    }

    private void Choice(Utf8JsonWriter json, Choice choice)
    {
        json.WriteNumber("bar", choice.Bar);
        json.WriteNumber("pass", choice.Pass);
        json.WriteNumber("beat", choice.Beat);
        json.WriteString("start", choice.Start.ToString());
        json.WriteString("length", choice.Length.ToString());
        json.WriteString("symbol", choice.Symbol);
        json.WriteString("soundingBass", choice.SoundingBass?.ToString());
        json.WriteString("figure", choice.Figure);
        json.WriteNumbers("strokes", strokes.Of(choice.Strokes));
        json.WriteLine("clash", choice.Clash, Clash);
        json.WriteNumber("dose", choice.Dose);
        json.WriteNumber("closeRootClash", choice.CloseRootClash);
        json.WriteLines("quarrels", choice.Quarrels, JsonQuarrel.Write);
        json.WriteNotes("ringingOn", choice.RingingOn);
        json.WriteLines("alternatives", choice.Alternatives, JsonReasons.Write);
        json.WriteObject("former", choice.Former, JsonReasons.Write);
        json.WriteLines("terms", choice.Terms, JsonReasons.Write);
        json.WriteObject("barred", choice.Barred, JsonReasons.Write);
        json.WriteNumber("hearings", choice.Hearings);
        json.WriteString("toneNames", string.Join(' ', choice.ToneNames));
        if (choice.LeftRinging.Count > 0)
        {
            json.WriteString("leftRinging", string.Join(' ', choice.LeftRinging));
        }
    }

    private static void Status(Utf8JsonWriter json, SearchStatus status)
    {
        json.WriteNumber("price", status.Price);
        json.WriteNumber("bound", status.Bound);
        json.WriteNumber("starts", status.Starts);
        if (status.WasCutShort)
        {
            json.WriteBoolean("timeLimitReached", true);
        }
    }

    internal static void Tower(Utf8JsonWriter json, TowerSummary tower)
    {
        json.WriteString("name", tower.Name);
        json.WriteNumber("bells", tower.Bells);
        json.WriteNote("lowest", tower.Lowest);
        json.WriteNote("highest", tower.Highest);
        json.WriteNotes("missing", tower.Missing);
        json.WriteNumber("measuredBells", tower.MeasuredBells);
        json.WriteNumber("transposition", tower.Transposition.Semitones);
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

    internal static void Stroke(Utf8JsonWriter json, Stroke stroke)
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
