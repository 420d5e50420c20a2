namespace Revoicer.Cli.Streams;

/// <summary>Tells a reader that has gone away from a real fault of writing.</summary>
internal static class Pipes
{
    private const int BrokenPipe = 32;

    /// <summary>Whether the reader of a pipe has closed it, which ends the program quietly.</summary>
    public static bool IsBroken(IOException e) => (e.HResult & 0xffff) == BrokenPipe || (e.InnerException?.HResult & 0xffff) == BrokenPipe;
}
