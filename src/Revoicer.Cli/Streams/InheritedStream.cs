using System.Globalization;

namespace Revoicer.Cli.Streams;

/// <summary>
/// Whether a standard stream came open from the caller. Where one was closed, the runtime has opened something of its own
/// under its number before the program begins, mostly a pipe to itself; text written there would be lost, or harm it.
/// </summary>
internal static class InheritedStream
{
    // What the runtime opens first it opens under the lowest free numbers.
    private const int MostLookedAt = 16;

    // The last digit of the flags is how it is open: 0 reading, 1 writing, 2 both (open(2)).
    private const char Reading = '0';

    /// <summary>Whether what stands under a number can be written to and leads out of the program; true on systems that do not tell.</summary>
    /// <param name="descriptor">1 for the standard output, 2 for the standard error.</param>
    public static bool IsOpen(int descriptor)
    {
        if (!OperatingSystem.IsLinux() || !Directory.Exists("/proc/self/fd"))
        {
            return true;
        }

        return ModeOf(descriptor) is not (null or Reading)
            && (Target(descriptor) is not { } target || !target.StartsWith("pipe:", StringComparison.Ordinal) || !IsReadHere(target));
    }

    private static bool IsReadHere(string pipe) =>
        Enumerable.Range(0, MostLookedAt).Any(other => Target(other) == pipe && ModeOf(other) == Reading);

    private static string? Target(int descriptor) => Told(() => new FileInfo(Numbered("/proc/self/fd/", descriptor)).LinkTarget);

    private static char? ModeOf(int descriptor) => Told(() => File.ReadLines(Numbered("/proc/self/fdinfo/", descriptor))
        .First(line => line.StartsWith("flags:", StringComparison.Ordinal)))?[^1];

    private static string Numbered(string folder, int descriptor) => folder + descriptor.ToString(CultureInfo.InvariantCulture);

    private static string? Told(Func<string?> ask)
    {
        try
        {
            return ask();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidOperationException)
        {
            return null;
        }
    }
}
