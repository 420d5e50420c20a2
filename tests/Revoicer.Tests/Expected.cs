using System.Runtime.CompilerServices;
using Xunit;

namespace Revoicer.Tests;

/// <summary>
/// Compares a whole text with a file that is kept in the repository. On a difference the text at hand is written beside
/// it as NAME.received.txt, and the test fails with the first line that differs.
/// </summary>
internal static class Expected
{
    /// <summary>The text is that of tests/Revoicer.Tests/Writing/Expectations/NAME.txt.</summary>
    public static void Text(string name, string text) => Text(Folder(), name, text);

    /// <summary>The text is that of NAME.txt in a folder.</summary>
    public static void Text(string folder, string name, string text)
    {
        var file = Path.Combine(folder, name + ".txt");
        var received = Path.Combine(folder, name + ".received.txt");
        var kept = File.Exists(file) ? File.ReadAllText(file) : "";
        if (kept == text)
        {
            File.Delete(received);
            return;
        }

        File.WriteAllText(received, text);
        var (before, now) = (kept.Split('\n'), text.Split('\n'));
        var line = before.Zip(now).TakeWhile(pair => pair.First == pair.Second).Count();
        Assert.Fail($"{name}.txt, line {line + 1}\nexpected: {Line(before)}\nreceived: {Line(now)}\nthe whole text: {name}.received.txt beside it");

        string Line(string[] lines) => line < lines.Length ? lines[line] : "(the end)";
    }

    // A deterministic build may map the folder away; then it is found from where the tests run.
    private static string Folder([CallerFilePath] string here = "")
    {
        var root = Path.GetDirectoryName(here);
        for (var up = AppContext.BaseDirectory; !Directory.Exists(root) && up is not null; up = Path.GetDirectoryName(up))
        {
            root = Path.Combine(up, "tests", "Revoicer.Tests");
        }

        return Path.Combine(root!, "Writing", "Expectations");
    }
}
