using System.Text.Json;
using Revoicer.Comparisons;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>Several sheets under the same settings as JSON (RFC 8259), described in docs/files.md under "Comparisons".</summary>
public static class SheetsComparedJson
{
    /// <summary>The version of the form; it grows when a member is taken away or means something else.</summary>
    public const int Format = 2;

    /// <summary>UTF-8 without byte order mark, indented, lines ending in \n. No times stand in it: the same comparisons give the same bytes.</summary>
    /// <param name="sheets">The sheets in the order in which they are written.</param>
    public static byte[] Write(Items<SheetComparison> sheets) => JsonForm.File(sheets, Members);

    private static void Members(Utf8JsonWriter json, Items<SheetComparison> sheets)
    {
        json.WriteNumber("format", Format);
        json.WriteObjects("sheets", sheets, (_, sheet) =>
        {
            json.WriteString("name", sheet.Name);
            json.WriteObject("comparison", sheet.Comparison, ComparisonJson.Members);
        });
    }
}
