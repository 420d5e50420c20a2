using System.Text.Json;

namespace Revoicer.Tests.Comparisons;

/// <summary>What members a JSON text has, and of which kind each is.</summary>
internal static class JsonShape
{
    public static IEnumerable<string> Of(JsonElement element, string path = "") => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p => Of(p.Value, $"{path}.{p.Name}")),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(e => Of(e, $"{path}[]")).DefaultIfEmpty($"{path}[] empty"),
        JsonValueKind.True or JsonValueKind.False => [$"{path} Boolean"],
        var kind => [$"{path} {kind}"],
    };
}
