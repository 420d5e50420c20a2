namespace Revoicer.Cli.Files;

/// <summary>
/// Puts prepared files in the place of others so that each name always holds a whole file, the old or the new one, and
/// so that all can be undone until the last is in place. What was there before is kept itself, not a copy of it; the new
/// file has its permissions.
/// </summary>
/// <param name="force">Whether what exists may be replaced.</param>
/// <param name="put">Gives a file the name of another: from, to, and the name under which what is there is kept, null where nothing may be there.</param>
internal sealed class FileSwap(bool force, Action<string, string, string?> put)
{
    private readonly Dictionary<string, string> _prepared = new(RealPath.Comparer);
    private readonly Dictionary<string, string> _kept = new(RealPath.Comparer);
    private readonly List<string> _tried = [];

    /// <summary>As the system does it: where something is there, that gets another name and keeps its content, its owner and its times.</summary>
    public static void Put(string from, string to, string? kept)
    {
        if (kept is null)
        {
            File.Move(from, to, overwrite: false);
        }
        else
        {
            File.Replace(from, to, kept);
        }
    }

    /// <summary>Writes the new content under a passing name beside its target.</summary>
    public void Prepare(string target, ReadOnlySpan<byte> content)
    {
        var passing = PassingName.Beside(target);
        var mode = File.Exists(target) && !OperatingSystem.IsWindows() ? File.GetUnixFileMode(target) : (UnixFileMode?)null;
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (mode is not null && !OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = mode;
        }

        using var stream = new FileStream(passing, options);
        _prepared.Add(target, passing);
        stream.Write(content);
        stream.Flush(flushToDisk: true);

        // What a new file may not have by the player's own setting, the old one has all the same.
        if (mode is { } permissions && !OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(stream.SafeFileHandle, permissions);
        }
    }

    /// <summary>Gives the new content its name.</summary>
    public void PutInPlace(string target)
    {
        // Without force a file that has come in the meantime is not replaced either: it fails.
        var kept = force && File.Exists(target) ? PassingName.Beside(target) : null;
        if (kept is not null)
        {
            _kept.Add(target, kept);
        }

        _tried.Add(target);
        put(_prepared[target], target, kept);
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
        foreach (var target in _tried)
        {
            var old = _kept.GetValueOrDefault(target);
            if (!TryTo(() => PutBack(target, old)))
            {
                sentences.Add(old is null
                    ? $"{target} could not be removed again; delete it by hand"
                    : $"{target} could not be put back; its former content is in {old}");
            }
        }

        foreach (var passing in _prepared.Values)
        {
            TryTo(() => File.Delete(passing));
        }

        return sentences;
    }

    // The last step may have failed half-way: where the new file still has its passing name, the target is what it was.
    private void PutBack(string target, string? old)
    {
        var isInPlace = !File.Exists(_prepared[target]);
        if (old is null)
        {
            File.Delete(isInPlace ? target : _prepared[target]);
        }
        else if (isInPlace || !File.Exists(target))
        {
            File.Move(old, target, overwrite: true);
        }
        else
        {
            File.Delete(old);
        }
    }

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
