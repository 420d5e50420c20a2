using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Playing;

namespace Revoicer.Writing.Json;

/// <summary>Writes the members of where the tune lies, and of where else it could.</summary>
internal static class JsonLayout
{
    public static void Write(Utf8JsonWriter json, OtherOctave other)
    {
        json.WriteNumber("octaves", other.Octaves);
        json.WriteNumber("costsMore", other.CostsMore);
        json.WriteBoolean("exact", other.IsExact);
    }

    public static void Write(Utf8JsonWriter json, ChosenLayout layout)
    {
        json.WriteString("tune", TuneLayoutNames.Of(layout.Tune));
        json.WriteNumber("price", layout.Price);
        json.WriteLine("other", layout.Other, Write);
        json.WriteString("obstacle", layout.Obstacle);
    }

    private static void Write(Utf8JsonWriter json, OtherLayout other)
    {
        json.WriteNumber("price", other.Price);
        json.WriteNumber("clashDose", other.ClashDose);
        json.WriteNumber("tuneDose", other.TuneDose);
        json.WriteNumber("medianClash", other.MedianClash);
    }
}
