namespace Revoicer.Cli.Files;

/// <summary>
/// Writes a set of files whole or not at all: first each under a passing name in its own folder, then all are renamed.
/// A file that exists is replaced only by force, an input of the run never. A symbolic link stays; the file that it
/// leads to is written.
/// </summary>
internal static class OutputFiles
{
    /// <summary>Writes the files, or none of them.</summary>
    /// <param name="files">What is written.</param>
    /// <param name="force">Whether files that exist may be replaced.</param>
    /// <param name="inputs">The names of the files that were read; they are never written to.</param>
    public static WriteResult Write(IReadOnlyList<OutputFile> files, bool force, IReadOnlyList<string> inputs) =>
        Write(files, force, inputs, File.Move);

    /// <summary>What stands in the way of writing files of these names, as far as can be seen without writing; empty where nothing does.</summary>
    public static IReadOnlyList<string> Obstacles(IReadOnlyList<string> names, bool force, IReadOnlyList<string> inputs)
    {
        var check = new TargetCheck(force, inputs);
        foreach (var name in names)
        {
            check.PathFor(name);
        }

        return check.Sentences;
    }

    /// <summary>Writes the files, or none of them, with the renaming handed in, so that a test can let it fail.</summary>
    internal static WriteResult Write(
        IReadOnlyList<OutputFile> files, bool force, IReadOnlyList<string> inputs, Action<string, string, bool> rename)
    {
        var check = new TargetCheck(force, inputs);
        var targets = files.Select(f => (File: f, Path: check.PathFor(f.Name))).ToList();
        if (check.Sentences.Count > 0)
        {
            return new WriteResult.Failed(check.Sentences);
        }

        var swap = new FileSwap(force, rename);
        var name = "";
        try
        {
            foreach (var (file, path) in targets)
            {
                name = file.Name;
                swap.Prepare(path!, file.Content.Span);
            }

            foreach (var (file, path) in targets)
            {
                name = file.Name;
                swap.PutInPlace(path!);
            }

            swap.Finish();
            return new WriteResult.Written();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new WriteResult.Failed([$"{name} could not be written, so nothing was: {Reason(e)}", .. swap.Undo()]);
        }
    }

    private static string Reason(Exception e) => e is UnauthorizedAccessException
        ? "you may not write in that folder; name another place with --out"
        : $"{e.Message.TrimEnd('.')}; make room or name another place with --out";
}
