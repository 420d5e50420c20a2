using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Playing;

namespace Revoicer.Writing.Json;

/// <summary>Writes where the tune lies, and where else it could.</summary>
internal static class JsonLayout
{
    public static void Write(Utf8JsonWriter line, OtherOctave other)
    {
        line.WriteNumber("octaves", other.Octaves);
        if (other.CostsMore is { } costsMore)
        {
            line.WriteNumber("costsMore", costsMore);
        }
        else
        {
            line.WriteNull("costsMore");
        }

        line.WriteBoolean("exact", other.IsExact);
    }

    public static void Write(Utf8JsonWriter json, ChosenLayout? layout)
    {
        json.WritePropertyName("layout");
        if (layout is null)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartObject();
        json.WriteString("tune", TuneLayoutNames.Of(layout.Tune));
        json.WriteNumber("price", layout.Price);
        json.WritePropertyName("other");
        if (layout.Other is { } other)
        {
            json.WriteOnOneLine(line =>
            {
                line.WriteNumber("price", other.Price);
                line.WriteNumber("clashDose", other.ClashDose);
                line.WriteNumber("tuneDose", other.TuneDose);
                line.WriteNumber("medianClash", other.MedianClash);
            });
        }
        else
        {
            json.WriteNullValue();
        }

        json.WriteString("obstacle", layout.Obstacle);
        json.WriteEndObject();
    }
}
