using System.Diagnostics;

namespace Revoicer.Benchmarks;

/// <summary>Times whole runs of the built program: one to warm the disk, then the median of ten.</summary>
internal static class ProgramTimes
{
    private const int Runs = 10;

    public static int Print(string program, IEnumerable<string> sheets)
    {
        var folder = Directory.CreateTempSubdirectory("revoicer-times");
        try
        {
            foreach (var sheet in sheets)
            {
                var name = Path.Combine(folder.FullName, "draft");
                Seconds(program, sheet, name);
                var times = Enumerable.Range(0, Runs).Select(_ => Seconds(program, sheet, name)).Order().ToArray();
                Console.WriteLine(FormattableString.Invariant(
                    $"{Path.GetFileName(sheet)}: median {(times[4] + times[5]) / 2:0.00} s, {times[0]:0.00} to {times[^1]:0.00}"));
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        return 0;
    }

    private static double Seconds(string program, string sheet, string name)
    {
        var start = new ProcessStartInfo(program, ["draft", sheet, "--out", name, "--force"]) { RedirectStandardOutput = true };
        var since = Stopwatch.GetTimestamp();
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start");
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0
            ? Stopwatch.GetElapsedTime(since).TotalSeconds
            : throw new InvalidOperationException($"{program} ended with {process.ExitCode}");
    }
}
