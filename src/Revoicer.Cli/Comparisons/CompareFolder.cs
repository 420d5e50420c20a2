namespace Revoicer.Cli.Comparisons;

internal static class CompareFolder
{
    public static int Of(CompareRequest request, OpenedSettings settings, TextWriter output, TextWriter error, CancellationToken cancel) => ExitCode.Done;
}
