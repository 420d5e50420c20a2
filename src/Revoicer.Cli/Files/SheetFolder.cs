using Revoicer.Cli.Streams;
using Revoicer.LeadSheets;

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

            error.Say($"{folder}: the folder has no sheet; expected {SheetFile.Kinds} files in it");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.Say($"{folder}: the folder cannot be looked at: {e.Message.TrimEnd('.')}");
        }

        return null;
    }

    /// <summary>
    /// A sheet of a folder, as it would be read by itself, but never waited for: what holds nothing is not opened, as a pipe without
    /// a writer would keep all others from being read. Null, with every problem told, where it cannot be read.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="choice">Which tune of an ABC file, and which voice of it or of a score.</param>
    /// <param name="error">Where problems and warnings go.</param>
    public static LeadSheet? Read(string path, SheetChoice choice, TextWriter error)
    {
        if (!IsEmpty(path))
        {
            return SheetFile.Read(path, choice, error);
        }

        error.Say($"{path}: the file is empty, or is a pipe or a device and no file; expected a sheet. It is passed over");
        return null;
    }

    // Pipes and devices have the length 0, like empty files. What leads nowhere is opened all the same, which says why.
    private static bool IsEmpty(string path)
    {
        try
        {
            var file = File.ResolveLinkTarget(path, returnFinalTarget: true) ?? new FileInfo(path);
            return file is FileInfo { Exists: true, Length: 0 };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
