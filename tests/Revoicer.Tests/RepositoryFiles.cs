namespace Revoicer.Tests;

/// <summary>Finds files of the repository itself: documents and demo sheets that tests hold to what they say.</summary>
internal static class RepositoryFiles
{
    /// <summary>The text of a file, by its path from the repository's root.</summary>
    public static string Text(params string[] path) => File.ReadAllText(Path.Combine([Root(), .. path]));

    /// <summary>The full names of the files of a folder, in order, by the folder's path from the repository's root.</summary>
    public static IEnumerable<string> All(string folder, string pattern) =>
        Directory.GetFiles(Path.Combine(Root(), folder), pattern).Order(StringComparer.Ordinal);

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Revoicer.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("the tests do not lie inside the repository");
        }

        return folder.FullName;
    }
}
