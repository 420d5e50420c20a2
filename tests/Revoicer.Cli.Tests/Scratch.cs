namespace Revoicer.Cli.Tests;

/// <summary>A folder of a test's own, gone after it.</summary>
internal sealed class Scratch : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("revoicer-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public string At(string name) => Path.Combine(_folder, name);

    public string Put(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }

    public IEnumerable<string> Names() => Directory.GetFiles(_folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal);
}
