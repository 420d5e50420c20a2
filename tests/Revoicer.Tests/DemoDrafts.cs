using System.Collections.Concurrent;
using Revoicer.Arrangements;
using Revoicer.Sounds;
using Revoicer.Tests.Audits;

namespace Revoicer.Tests;

/// <summary>
/// Plain drafts of the demo sheets on the default tower. They are values that nothing changes, and many tests look at the
/// same ones, so that each is made once in a run of the tests.
/// </summary>
internal static class DemoDrafts
{
    private static readonly ConcurrentDictionary<(string File, string Sound), Lazy<Arrangement>> Made = new();

    /// <summary>The draft of a file.</summary>
    /// <param name="file">Its path, or its name in leadsheets-demo.</param>
    /// <param name="sound">The name of a shipped sound; null for the default.</param>
    public static Arrangement Of(string file, string? sound = null)
    {
        var path = Path.IsPathRooted(file) ? file : RepositoryFiles.All("leadsheets-demo", file).Single();
        var taken = sound is null ? ShippedSounds.Default : ShippedSounds.Named(sound);
        return Made.GetOrAdd((path, taken.Name), _ => new Lazy<Arrangement>(() => Passages.Draft(Passages.Sheet(path), taken))).Value;
    }
}
