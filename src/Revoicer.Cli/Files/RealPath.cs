namespace Revoicer.Cli.Files;

/// <summary>Finds the file that a name stands for in the end, through symbolic links in its folders and of its own.</summary>
internal static class RealPath
{
    // As many links in a row as Linux follows (path_resolution(7)).
    private const int MostLinks = 40;

    /// <summary>How two paths are compared: systems other than Linux mostly do not tell capitals apart.</summary>
    public static StringComparer Comparer { get; } =
        OperatingSystem.IsLinux() ? StringComparer.Ordinal : StringComparer.OrdinalIgnoreCase;

    /// <summary>The whole path without links; what does not exist is taken as it stands.</summary>
    /// <exception cref="IOException">The links lead in a circle, or a folder cannot be looked at.</exception>
    public static string Of(string name) => Of(name, 0);

    private static string Of(string name, int links)
    {
        if (links > MostLinks)
        {
            throw new IOException("its symbolic links lead in a circle");
        }

        var full = Path.GetFullPath(name);
        var path = Path.GetPathRoot(full)!;
        var parts = full[path.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < parts.Length; i++)
        {
            path = Path.Combine(path, parts[i]);
            if (new FileInfo(path).LinkTarget is { } target)
            {
                var beside = Path.Combine(Path.GetDirectoryName(path)!, target);
                return Of(Path.Combine([beside, .. parts[(i + 1)..]]), links + 1);
            }
        }

        return path;
    }
}
