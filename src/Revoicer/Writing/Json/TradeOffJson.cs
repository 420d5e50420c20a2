using System.Text.Json;
using Revoicer.Comparisons;

namespace Revoicer.Writing.Json;

/// <summary>A trade-off as JSON (RFC 8259), described in docs/files.md under "Trade-offs".</summary>
public static class TradeOffJson
{
    /// <summary>The version of the form; it grows when a member is taken away or means something else.</summary>
    public const int Format = 2;

    /// <summary>UTF-8 without byte order mark, indented, lines ending in \n. No times stand in it: the same trade-off gives the same bytes.</summary>
    public static byte[] Write(TradeOff tradeOff) => JsonForm.File(tradeOff, Members);

    private static void Members(Utf8JsonWriter json, TradeOff tradeOff)
    {
        var setting = tradeOff.AsItStands.Setting;
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
        json.WriteObject("asItStands", tradeOff.AsItStands.Figures, ComparisonJson.Figures);
        json.WriteNumber("drafts", tradeOff.Drafts.Count);
        json.WriteNumber("same", tradeOff.Same);
        json.WriteNumber("outdone", tradeOff.Outdone);
        json.WriteObjects("points", tradeOff.Points, (_, point) =>
        {
            json.WriteNumber("atLeast", point.Asked?.Value);
            json.WriteNumber("weakest", point.Made!.WeakestCarry?.Value);
            json.WriteObject("figures", point.Compared.Figures, ComparisonJson.Figures);
        });
        json.WriteObjects("failed", tradeOff.Failed, (_, point) =>
        {
            json.WriteNumber("atLeast", point.Asked?.Value);
            json.WriteTexts("obstacles", point.Compared.Obstacles);
        });
    }
}
