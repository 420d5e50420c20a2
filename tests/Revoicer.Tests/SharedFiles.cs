using Xunit;

namespace Revoicer.Tests;

/// <summary>Finds reference data that lies beside the repository; where it is absent a test skips.</summary>
internal static class SharedFiles
{
    /// <summary>The path of a file in ../shared of the repository's root, or null where there is none.</summary>
    public static string? Find(params string[] path)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Revoicer.sln")))
            {
                var file = Path.Combine([folder.FullName, "..", "shared", .. path]);
                return File.Exists(file) ? file : null;
            }
        }

        return null;
    }

    /// <summary>The lines of such a file; skips the test where it is absent.</summary>
    public static string[] LinesOrSkip(params string[] path)
    {
        var file = Find(path);
        Assert.SkipWhen(file is null, $"../shared/{string.Join('/', path)} is absent");
        return File.ReadAllLines(file!);
    }
}
