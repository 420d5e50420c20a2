using System.Text;

namespace Revoicer.Values;

/// <summary>The data files that travel inside the library.</summary>
internal static class Embedded
{
    /// <summary>The text of a file, UTF-8, by its resource name ("Revoicer.Bells.Data.bell-law.tsv").</summary>
    /// <exception cref="ArgumentException">The library holds no such file: a fault of the build.</exception>
    public static string Text(string resource)
    {
        using var stream = typeof(Embedded).Assembly.GetManifestResourceStream(resource)
            ?? throw new ArgumentException($"the library holds no file '{resource}'", nameof(resource));
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
