using System.Runtime.CompilerServices;
using Xunit;

namespace Revoicer.Tests.HouseRules;

public sealed class SourceTests
{
    private const int MostLines = 250;

    // Why a file may be longer: a table, or one page of words that is read whole.
    private static readonly Dictionary<string, string> Exempt = new()
    {
        ["src/Revoicer/Chords/SuffixParser.cs"] = "the grammar of chord suffixes, one page",
        ["src/Revoicer/Writing/Json/ArrangementJsonWriter.cs"] = "the table of the JSON form's words",
    };

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
        Assert.Empty(tooLong.Except(Exempt.Keys));
        Assert.Empty(Exempt.Keys.Except(tooLong));
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
