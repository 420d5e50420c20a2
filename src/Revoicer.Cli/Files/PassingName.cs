using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Revoicer.Cli.Files;

/// <summary>
/// The names that files bear while they are put in place, ".revoicer-PROCESS-RUN-NUMBER": short whatever the file is called,
/// hidden, not to be guessed by others who write in the folder, and telling whose they are, so that what a run left that was
/// killed can be told from what another is about to put in place.
/// </summary>
internal static partial class PassingName
{
    // The number of a process comes again; with this the names of this run are its own.
    private static readonly string Run = Path.GetFileNameWithoutExtension(Path.GetRandomFileName());

    private static int _count;

    /// <summary>A new name beside a file.</summary>
    public static string Beside(string path) => Path.Combine(
        Path.GetDirectoryName(path)!,
        string.Create(CultureInfo.InvariantCulture, $".revoicer-{Environment.ProcessId}-{Run}-{Interlocked.Increment(ref _count)}"));

    /// <summary>Removes from a folder what runs left that are over. What cannot be removed harms nothing but tidiness.</summary>
    public static void RemoveLeftovers(string folder)
    {
        foreach (var path in Directory.EnumerateFiles(folder, ".revoicer-*").Where(IsLeftover).ToArray())
        {
            try
            {
                File.Delete(path);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                continue;
            }
        }
    }

    private static bool IsLeftover(string path) =>
        Form().Match(Path.GetFileName(path)) is { Success: true, Groups: [_, var process, var run] }
        && int.TryParse(process.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
        && (id == Environment.ProcessId ? run.Value != Run : !IsAtWork(id));

    private static bool IsAtWork(int process)
    {
        try
        {
            using var found = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    [GeneratedRegex(@"^\.revoicer-([0-9]+)-([a-z0-9]+)-[0-9]+$")]
    private static partial Regex Form();
}
