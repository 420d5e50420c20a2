using Revoicer.Cli.Files;
using Revoicer.Cli.Streams;

namespace Revoicer.Cli.Comparisons;

/// <summary>Writes what a compare command puts into files.</summary>
internal static class ComparisonFiles
{
    /// <summary>
    /// Whether the files that are known by name beforehand can go where they are to, as far as can be seen before the work; where
    /// they cannot, why is told.
    /// </summary>
    public static bool CanWrite(CompareRequest request, OpenedSettings settings, TextWriter error)
    {
        var obstacles = OutputFiles.Obstacles([.. Known(request)], request.Force, Inputs(request, settings));
        error.Say(obstacles.Select(sentence => $"revoicer: {sentence}"));
        return obstacles.Count == 0;
    }

    private static IEnumerable<string> Known(CompareRequest request)
    {
        var name = OutputName.Of(request.Out, request.Sheet);
        var picture = name + (request.TradeOff ? "-trade-off" : "-clash");
        return
        [
            .. request.Plain ? [$"{name}-plain.mid"] : Array.Empty<string>(),
            .. request.Pictures ? [picture + ".svg", picture + ".png"] : Array.Empty<string>(),
            .. request is { TradeOff: true, SoundFolder: { } folder } && Directory.Exists(folder) ? [Path.Combine(folder, Path.GetFileNameWithoutExtension(request.Sheet) + "-01.toml")] : Array.Empty<string>(),
        ];
    }

    private static string[] Inputs(CompareRequest request, OpenedSettings settings) =>
        [request.Sheet, .. settings.Files, .. request.Wishes is { } wishes ? [wishes] : Array.Empty<string>()];

    /// <summary>Writes all of them or none; what was written, or why not, is told. The exit code.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="settings">The settings, whose files are never written to.</param>
    /// <param name="others">What else is written.</param>
    /// <param name="pictures">The pictures; drawn only where they are asked for.</param>
    /// <param name="output">Where what was written is told.</param>
    /// <param name="error">Where problems are told.</param>
    /// <param name="cancel">Once it is cancelled nothing is written.</param>
    public static int Write(
        CompareRequest request,
        OpenedSettings settings,
        IEnumerable<OutputFile> others,
        IEnumerable<ComparedPicture> pictures,
        TextWriter output,
        TextWriter error,
        CancellationToken cancel)
    {
        ComparedPicture[] drawn = [.. request.Pictures ? pictures : []];
        var name = OutputName.Of(request.Out, request.Sheet);
        if (ComparedPictures.Files(drawn, name, error) is not { } drawings)
        {
            return ExitCode.NotWritten;
        }

        OutputFile[] files = [.. others, .. drawings];
        if (OutputFiles.Write(files, request.Force, Inputs(request, settings), cancel) is WriteResult.Failed failed)
        {
            error.Say(failed.Sentences.Select(sentence => $"revoicer: {sentence}"));
            return ExitCode.NotWritten;
        }

        // What a program reads stands alone on the standard output.
        var told = request.AsJson ? error : output;
        told.Say(files.Select(f => $"wrote {f.Name}"));
        told.Say(drawn.Where(p => p.Aside is not null).Select(p => $"{name}{p.Ending}: {p.Aside}"));
        return ExitCode.Done;
    }
}
