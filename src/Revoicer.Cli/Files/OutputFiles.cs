namespace Revoicer.Cli.Files;

/// <summary>
/// Writes a set of files whole or not at all: first each under a passing name in its own folder, then all are renamed.
/// A file that exists is replaced only by force, an input of the run never. A symbolic link stays; the file that it
/// leads to is written.
/// </summary>
internal static class OutputFiles
{
    private static readonly Lock Writing = new();

    /// <summary>Writes the files, or none of them.</summary>
    /// <param name="files">What is written.</param>
    /// <param name="force">Whether files that exist may be replaced.</param>
    /// <param name="inputs">The names of the files that were read; they are never written to.</param>
    /// <param name="cancel">Once it is cancelled nothing is begun.</param>
    public static WriteResult Write(IReadOnlyList<OutputFile> files, bool force, IReadOnlyList<string> inputs, CancellationToken cancel)
    {
        lock (Writing)
        {
            cancel.ThrowIfCancellationRequested();
            return Write(files, force, inputs, FileSwap.Put);
        }
    }

    /// <summary>Waits until what is being written is in place, or is undone.</summary>
    public static void AwaitWriting()
    {
        lock (Writing)
        {
        }
    }

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

    /// <summary>Writes the files, or none of them, with the last step handed in, so that a test can let it fail.</summary>
    internal static WriteResult Write(
        IReadOnlyList<OutputFile> files, bool force, IReadOnlyList<string> inputs, Action<string, string, string?> put)
    {
        var check = new TargetCheck(force, inputs);
        var targets = files.Select(f => (File: f, Path: check.PathFor(f.Name))).ToList();
        if (check.Sentences.Count > 0)
        {
            return new WriteResult.Failed(check.Sentences);
        }

        var swap = new FileSwap(force, put);
        var name = "";
        try
        {
            foreach (var folder in targets.Select(t => Path.GetDirectoryName(t.Path)!).Distinct(RealPath.Comparer))
            {
                PassingName.RemoveLeftovers(folder);
            }

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
