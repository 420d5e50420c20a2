namespace Revoicer.Cli.Files;

/// <summary>Finds the file that a name stands for in the end, through symbolic links in its folders and of its own.</summary>
internal static class RealPath
{
    // As many links in a name as Linux follows (path_resolution(7)).
    private const int MostLinks = 40;

    /// <summary>How two paths are compared: systems other than Linux mostly do not tell capitals apart.</summary>
    public static StringComparer Comparer { get; } =
        OperatingSystem.IsLinux() ? StringComparer.Ordinal : StringComparer.OrdinalIgnoreCase;

    /// <summary>The whole path without links, found step by step as the system does: ".." leads out of the folder that a link led to. What does not exist is taken as it stands.</summary>
    /// <exception cref="IOException">There are too many links, or a folder cannot be looked at.</exception>
    public static string Of(string name)
    {
        // Refuses what is no name at all.
        _ = Path.GetFullPath(name);
        if (OperatingSystem.IsWindows())
        {
            return Path.GetFullPath(name);
        }

        var path = name.StartsWith('/') ? "/" : Directory.GetCurrentDirectory();
        var ahead = new Stack<string>(Parts(name));
        var links = 0;
        while (ahead.TryPop(out var part))
        {
            if (part == "..")
            {
                path = Path.GetDirectoryName(path) ?? path;
                continue;
            }

            var step = Path.Combine(path, part);
            if (new FileInfo(step).LinkTarget is not { } target)
            {
                path = step;
                continue;
            }

            if (++links > MostLinks)
            {
                throw new IOException("its symbolic links lead in a circle");
            }

            path = target.StartsWith('/') ? "/" : path;
            foreach (var further in Parts(target))
            {
                ahead.Push(further);
            }
        }

        return path;
    }

    // The last first, as a stack gives them back.
    private static IEnumerable<string> Parts(string name) =>
        name.Split('/', StringSplitOptions.RemoveEmptyEntries).Where(part => part != ".").Reverse();
}
