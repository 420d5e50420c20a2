namespace Revoicer.Cli.Files;

/// <summary>
/// Puts prepared files in the place of others so that each name always holds a whole file, the old or the new one, and
/// so that all can be undone until the last is in place.
/// </summary>
/// <param name="force">Whether what exists may be replaced.</param>
/// <param name="rename">Renames a file: from, to, whether it may replace.</param>
internal sealed class FileSwap(bool force, Action<string, string, bool> rename)
{
    private readonly Dictionary<string, string> _prepared = new(RealPath.Comparer);
    private readonly Dictionary<string, string> _kept = new(RealPath.Comparer);
    private readonly List<string> _inPlace = [];

    /// <summary>Writes the new content under a passing name beside its target, and keeps what the target holds.</summary>
    public void Prepare(string target, ReadOnlySpan<byte> content)
    {
        var passing = PassingName(target);
        using (var stream = new FileStream(passing, FileMode.CreateNew, FileAccess.Write))
        {
            _prepared.Add(target, passing);
            stream.Write(content);
            stream.Flush(flushToDisk: true);
        }

        if (File.Exists(target))
        {
            var old = PassingName(target);
            _kept.Add(target, old);
            File.Copy(target, old);
        }
    }

    /// <summary>Gives the new content its name.</summary>
    public void PutInPlace(string target)
    {
        // Without force a file that has come in the meantime is not replaced either: the renaming fails.
        rename(_prepared[target], target, force);
        _prepared.Remove(target);
        _inPlace.Add(target);
    }

    /// <summary>All are in place: what was kept goes. That it should not go harms nothing but tidiness.</summary>
    public void Finish()
    {
        foreach (var old in _kept.Values)
        {
            TryTo(() => File.Delete(old));
        }
    }

    /// <summary>Puts everything back, and tells what could not be.</summary>
    public IReadOnlyList<string> Undo()
    {
        var sentences = new List<string>();
        foreach (var target in _inPlace)
        {
            var isBack = _kept.Remove(target, out var old)
                ? TryTo(() => File.Move(old, target, overwrite: true))
                : TryTo(() => File.Delete(target));
            if (!isBack)
            {
                sentences.Add(old is null
                    ? $"{target} could not be removed again; delete it by hand"
                    : $"{target} could not be put back; its former content is in {old}");
            }
        }

        foreach (var passing in _prepared.Values.Concat(_kept.Values))
        {
            TryTo(() => File.Delete(passing));
        }

        return sentences;
    }

    // Short whatever the target is called, hidden, and not to be guessed by others who write in the folder.
    private static string PassingName(string target) =>
        Path.Combine(Path.GetDirectoryName(target)!, $".revoicer-{Path.GetRandomFileName()}");

    private static bool TryTo(Action action)
    {
        try
        {
            action();
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
