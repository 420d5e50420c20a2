using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Voicings;

namespace Revoicer.Writing.Json;

/// <summary>Writes what else was weighed for a chord, and what stood there before.</summary>
internal static class JsonReasons
{
    public static void Write(Utf8JsonWriter json, RunnerUp? runnerUp)
    {
        if (runnerUp is null)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartObject();
        json.WriteString("figure", runnerUp.Figure);
        json.WriteNotes("notes", runnerUp.Notes);
        json.WriteNumber("dearer", runnerUp.Dearer);
        json.WriteLines("differences", runnerUp.Differences, Write);
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
        if (former.Dearer is { } dearer)
        {
            json.WriteNumber("dearer", dearer);
        }
        else
        {
            json.WriteNull("dearer");
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

    public static void Write(Utf8JsonWriter json, PricedTerm term)
    {
        json.WriteString("term", term.Term);
        json.WriteNumber("thousandths", term.Thousandths);
    }
}
