using System.Runtime.CompilerServices;
using Xunit;

namespace Revoicer.Tests.HouseRules;

public sealed class SourceTests
{
    private const int MostLines = 250;

    [Fact]
    public void No_source_file_is_longer_than_250_lines()
    {
        var root = Root();
        Assert.SkipWhen(root is null, "the sources do not lie above the tests");
        var files = Directory.EnumerateFiles(Path.Combine(root!, "src"), "*.cs", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(root!, file).Replace('\\', '/'))
            .Where(file => !file.Split('/').Any(part => part is "bin" or "obj"))
            .ToArray();
        var tooLong = files.Where(file => File.ReadLines(Path.Combine(root!, file)).Count() > MostLines).ToArray();

        Assert.Contains("src/Revoicer/Playing/Checker.cs", files);
        Assert.Empty(tooLong);
    }

    private static string? Root([CallerFilePath] string here = "")
    {
        var starts = new[] { AppContext.BaseDirectory, Path.GetDirectoryName(here) };
        return starts.SelectMany(Upward).FirstOrDefault(folder => File.Exists(Path.Combine(folder, "Revoicer.sln")));
    }

    private static IEnumerable<string> Upward(string? folder)
    {
        for (; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            yield return folder;
        }
    }
}
