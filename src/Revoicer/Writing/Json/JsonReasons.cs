using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Voicings;

namespace Revoicer.Writing.Json;

/// <summary>Writes the members of what else was weighed for a chord, and of what stood there before.</summary>
internal static class JsonReasons
{
    public static void Write(Utf8JsonWriter json, Alternative alternative)
    {
        json.WriteString("figure", alternative.Figure);
        json.WriteNotes("notes", alternative.Notes);
        json.WriteNumber("costsMore", alternative.CostsMore);
        json.WriteObjects("differences", alternative.Differences, Write);
    }

    public static void Write(Utf8JsonWriter json, BarredVoicing barred)
    {
        json.WriteString("figure", barred.Figure);
        json.WriteNotes("notes", barred.Notes);
        json.WriteNumber("costsLess", barred.CostsLess);
        json.WriteString("rule", barred.Rule);
    }

    public static void Write(Utf8JsonWriter json, FormerChord former)
    {
        json.WriteNotes("notes", former.Notes);
        json.WriteBoolean("kept", former.IsKept);
        json.WriteNumber("costsMore", former.CostsMore);
        json.WriteLines("differences", former.Differences, Write);
        json.WriteObject("obstacle", former.Obstacle, Write);
    }

    public static void Write(Utf8JsonWriter json, PricedTerm term)
    {
        json.WriteString("term", term.Term);
        json.WriteNumber("thousandths", term.Thousandths);
    }

    private static void Write(Utf8JsonWriter json, Obstacle obstacle)
    {
        json.WriteString("kind", ObstacleNames.Of(obstacle.Kind));
        json.WriteNotes("notes", obstacle.Notes);
    }
}
