using System.Text.Json;
using Revoicer.Playing;

namespace Revoicer.Writing.Json;

/// <summary>Writes the members of a fatigue.</summary>
internal static class JsonFatigue
{
    /// <summary>Writes them into the open object.</summary>
    public static void Write(Utf8JsonWriter json, Fatigue fatigue)
    {
        json.WriteNumber("level", fatigue.Level);
        json.WriteNumber("levelAt", fatigue.LevelAt.Value);
        json.WriteNumber("tires", fatigue.Tires);
        json.WriteNumber("tooMuch", fatigue.TooMuch);
        json.WriteNumber("row", fatigue.Row);
        json.WriteNumber("rowAt", fatigue.RowAt.Value);
        json.WriteNumber("rowTires", fatigue.RowTires);
    }
}
