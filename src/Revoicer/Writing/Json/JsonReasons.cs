using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Voicings;

namespace Revoicer.Writing.Json;

/// <summary>Writes what else was weighed for a chord, and what stood there before.</summary>
internal static class JsonReasons
{
    public static void Write(Utf8JsonWriter json, Alternative alternative)
    {
        json.WriteString("figure", alternative.Figure);
        json.WriteNotes("notes", alternative.Notes);
        json.WriteNumber("costsMore", alternative.CostsMore);
        json.WriteStartArray("differences");
        foreach (var difference in alternative.Differences)
        {
            json.WriteStartObject();
            Write(json, difference);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static void Write(Utf8JsonWriter json, BarredVoicing? barred)
    {
        if (barred is null)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartObject();
        json.WriteString("figure", barred.Figure);
        json.WriteNotes("notes", barred.Notes);
        json.WriteNumber("costsLess", barred.CostsLess);
        json.WriteString("rule", barred.Rule);
        json.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter json, FormerChord? former)
    {
        if (former is null)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartObject();
        json.WriteNotes("notes", former.Notes);
        json.WriteBoolean("kept", former.IsKept);
        if (former.CostsMore is { } costsMore)
        {
            json.WriteNumber("costsMore", costsMore);
        }
        else
        {
            json.WriteNull("costsMore");
        }

        json.WriteLines("differences", former.Differences, Write);
        if (former.Obstacle is { } obstacle)
        {
            json.WriteStartObject("obstacle");
            json.WriteString("kind", ObstacleNames.Of(obstacle.Kind));
            json.WriteNotes("notes", obstacle.Notes);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("obstacle");
        }

        json.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter json, StrongBeats beats)
    {
        json.WriteNumber("withBass", beats.WithBass);
        json.WriteNumber("longEnough", beats.LongEnough);
        json.WriteNumber("all", beats.All);
    }

    public static void Write(Utf8JsonWriter json, PricedTerm term)
    {
        json.WriteString("term", term.Term);
        json.WriteNumber("thousandths", term.Thousandths);
    }
}
