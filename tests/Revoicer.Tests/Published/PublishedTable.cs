using System.Globalization;

namespace Revoicer.Tests.Published;

/// <summary>A table of check values that travels with the tests: tab-separated, source in its '#' lines, then a header.</summary>
internal static class PublishedTable
{
    public static IEnumerable<string[]> Rows(string name)
    {
        using var stream = typeof(PublishedTable).Assembly.GetManifestResourceStream("Published." + name)
            ?? throw new ArgumentException($"no table '{name}' in the tests", nameof(name));
        using var reader = new StreamReader(stream);
        var lines = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return [.. lines.Select(l => l.TrimEnd('\r')).Where(l => l[0] != '#').Skip(1).Select(l => l.Split('\t'))];
    }

    public static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
