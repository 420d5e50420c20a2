namespace Revoicer.Cli.Files;

/// <summary>The sheets of a folder.</summary>
internal static class SheetFolder
{
    /// <summary>
    /// The files of a kind that can be read, in the order of their names (by character code, so alike everywhere), not those in
    /// folders inside, nor hidden ones. A symbolic link to a file counts as that file. Null, with a sentence told, where
    /// there is none or the folder cannot be looked at.
    /// </summary>
    public static IReadOnlyList<string>? List(string folder, TextWriter error)
    {
        try
        {
            string[] sheets =
            [
                .. Directory.EnumerateFiles(folder)
                    .Where(path => !Path.GetFileName(path).StartsWith('.') && SheetFile.IsSheet(path))
                    .OrderBy(Path.GetFileName, StringComparer.Ordinal),
            ];
            if (sheets.Length > 0)
            {
                return sheets;
            }

            error.Write($"{folder}: the folder has no sheet; expected {SheetFile.Kinds} files in it\n");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.Write($"{folder}: the folder cannot be looked at: {e.Message.TrimEnd('.')}\n");
        }

        return null;
    }
}
