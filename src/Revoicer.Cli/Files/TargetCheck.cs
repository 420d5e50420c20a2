namespace Revoicer.Cli.Files;

/// <summary>Looks at where files are to go before the first byte is written, and tells all that stands in the way.</summary>
internal sealed class TargetCheck
{
    private readonly bool _force;
    private readonly HashSet<string> _inputs = new(RealPath.Comparer);
    private readonly HashSet<string> _taken = new(RealPath.Comparer);
    private readonly List<string> _sentences = [];

    public TargetCheck(bool force, IReadOnlyList<string> inputs)
    {
        _force = force;

        // One whose name leads nowhere, such as a link to itself among the sheets of a folder, was not read.
        _inputs.UnionWith(inputs.Select(input => Resolve(input).Path).OfType<string>());
    }

    /// <summary>What stands in the way; empty where nothing does.</summary>
    public IReadOnlyList<string> Sentences => _sentences;

    /// <summary>The file that a name leads to; null where it cannot be found out, which has then been told.</summary>
    public string? PathFor(string name)
    {
        var (resolved, problem) = Resolve(name);
        if (resolved is not { } path)
        {
            _sentences.Add($"{name} is no file name that leads anywhere: {problem}; name another file with --out");
            return null;
        }

        if (Obstacle(name, path) is { } sentence)
        {
            _sentences.Add(sentence);
        }

        return path;
    }

    private string? Obstacle(string name, string path)
    {
        if (_inputs.Contains(path))
        {
            return $"{name} is an input of this run and is never written to; name another file with --out";
        }

        if (!_taken.Add(path))
        {
            return $"{name} would be written twice; give the files different names";
        }

        if (Directory.Exists(path))
        {
            return $"{name} is a folder; name another file with --out";
        }

        if (FileKind.Special(path) is { } special)
        {
            return $"{name} is {special} and no file, and is never written to; name another file with --out";
        }

        if (!Directory.Exists(Path.GetDirectoryName(path)))
        {
            return $"the folder of {name} does not exist; make it, or name another file with --out";
        }

        return File.Exists(path) && !_force
            ? $"{name} exists already; --force replaces it, --out NAME writes beside it under another name"
            : null;
    }

    private static (string? Path, string Problem) Resolve(string name)
    {
        try
        {
            return (RealPath.Of(name), "");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return (null, e.Message.TrimEnd('.'));
        }
    }
}
