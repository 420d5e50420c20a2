using Revoicer.Cli.Files;

namespace Revoicer.Cli.Comparisons;

/// <summary>Writes what a compare command puts into files.</summary>
internal static class ComparisonFiles
{
    /// <summary>Writes all of them or none; what was written, or why not, is told. The exit code.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="settings">The settings, whose files are never written to.</param>
    /// <param name="others">What else is written.</param>
    /// <param name="pictures">The pictures; drawn only where they are asked for.</param>
    /// <param name="output">Where what was written is told.</param>
    /// <param name="error">Where problems are told.</param>
    public static int Write(
        CompareRequest request,
        OpenedSettings settings,
        IEnumerable<OutputFile> others,
        IEnumerable<ComparedPicture> pictures,
        TextWriter output,
        TextWriter error)
    {
        ComparedPicture[] drawn = [.. request.Pictures ? pictures : []];
        var name = OutputName.Of(request.Out, request.Sheet);
        if (ComparedPictures.Files(drawn, name, error) is not { } drawings)
        {
            return ExitCode.NotWritten;
        }

        OutputFile[] files = [.. others, .. drawings];
        string[] inputs = [request.Sheet, .. settings.Files, .. request.Wishes is { } wishes ? [wishes] : Array.Empty<string>()];
        if (OutputFiles.Write(files, request.Force, inputs) is WriteResult.Failed failed)
        {
            error.Write(string.Concat(failed.Sentences.Select(sentence => $"revoicer: {sentence}\n")));
            return ExitCode.NotWritten;
        }

        // What a program reads stands alone on the standard output.
        var told = request.AsJson ? error : output;
        told.Write(string.Concat(files.Select(f => $"wrote {f.Name}\n")));
        told.Write(string.Concat(drawn.Where(p => p.Aside is not null).Select(p => $"{name}{p.Ending}: {p.Aside}\n")));
        return ExitCode.Done;
    }
}
