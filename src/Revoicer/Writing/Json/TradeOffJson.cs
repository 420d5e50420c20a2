using System.Buffers;
using System.Text.Json;
using Revoicer.Comparisons;

namespace Revoicer.Writing.Json;

/// <summary>A trade-off as JSON (RFC 8259), described in docs/files.md under "Trade-offs".</summary>
public static class TradeOffJson
{
    /// <summary>The version of the form; it grows when a member is taken away or means something else.</summary>
    public const int Format = 2;

    /// <summary>UTF-8 without byte order mark, indented, lines ending in \n. No times stand in it: the same trade-off gives the same bytes.</summary>
    public static byte[] Write(TradeOff tradeOff)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, ComparisonJson.Indented))
        {
            var setting = tradeOff.AsItStands.Setting;
            json.WriteStartObject();
            json.WriteNumber("format", Format);
            json.WriteString("title", tradeOff.Title);
            json.WriteString("tower", setting.Tower);
            json.WriteString("sound", setting.Sound);
            json.WriteString("layout", setting.Layout);
            json.WriteNumber("semitones", setting.Semitones);
            json.WriteString("writtenKey", setting.Key?.ToString());
            json.WriteNumber("target", tradeOff.Target.Value);
            json.WriteBoolean("tuneMoves", tradeOff.TuneMoves);
            json.WriteNumbers("unheard", tradeOff.Unheard);
            json.WritePropertyName("asItStands");
            ComparisonJson.Figures(json, tradeOff.AsItStands.Figures);
            json.WriteNumber("drafts", tradeOff.Drafts.Count);
            json.WriteNumber("same", tradeOff.Same);
            json.WriteNumber("outdone", tradeOff.Outdone);
            Points(json, tradeOff);
            Failed(json, tradeOff);
            json.WriteEndObject();
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
    }

    private static void Points(Utf8JsonWriter json, TradeOff tradeOff)
    {
        json.WriteStartArray("points");
        foreach (var point in tradeOff.Points)
        {
            json.WriteStartObject();
            ComparisonJson.Number(json, "atLeast", point.Asked?.Value);
            ComparisonJson.Number(json, "weakest", point.Made!.WeakestCarry?.Value);
            json.WritePropertyName("figures");
            ComparisonJson.Figures(json, point.Compared.Figures);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Failed(Utf8JsonWriter json, TradeOff tradeOff)
    {
        json.WriteStartArray("failed");
        foreach (var point in tradeOff.Failed)
        {
            json.WriteStartObject();
            ComparisonJson.Number(json, "atLeast", point.Asked?.Value);
            ComparisonJson.Strings(json, "obstacles", point.Compared.Obstacles);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
