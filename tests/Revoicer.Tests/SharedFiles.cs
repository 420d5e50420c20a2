using Xunit;

namespace Revoicer.Tests;

/// <summary>Reference data kept beside the repository, in ../shared; not every machine has it.</summary>
internal static class SharedFiles
{
    /// <summary>The full path of a shared file, or null where it is absent.</summary>
    public static string? Find(params string[] path)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Revoicer.sln")))
            {
                var file = Path.Combine([folder.FullName, "..", "shared", .. path]);
                return File.Exists(file) ? Path.GetFullPath(file) : null;
            }
        }

        return null;
    }

    /// <summary>The lines of a shared file; the running test is skipped where it is absent.</summary>
    public static string[] LinesOrSkip(params string[] path)
    {
        var file = Find(path);
        Assert.SkipUnless(file is not null, $"../shared/{string.Join('/', path)} is absent");
        return File.ReadAllLines(file!);
    }
}
