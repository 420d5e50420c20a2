namespace Revoicer.Tests;

/// <summary>Finds files of the repository itself: documents and demo sheets that tests hold to what they say.</summary>
internal static class RepositoryFiles
{
    /// <summary>The text of a file, by its path from the repository's root.</summary>
    public static string Text(params string[] path)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Revoicer.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("the tests do not lie inside the repository");
        }

        return File.ReadAllText(Path.Combine([folder.FullName, .. path]));
    }
}
