using Revoicer.LeadSheets;
using Revoicer.LeadSheets.ChordGrid;

namespace Revoicer.Cli.Files;

/// <summary>Reads a lead sheet from disk.</summary>
internal static class SheetFile
{
    private const int LargestBytes = 4 * 1024 * 1024;

    /// <summary>The sheet; null, with every problem told, where it cannot be read. Warnings are told as well.</summary>
    public static LeadSheet? Read(string path, TextWriter error)
    {
        if (!path.EndsWith(".chords", StringComparison.OrdinalIgnoreCase))
        {
            error.Write($"{path}: not a kind of file that can be read; expected a .chords file (docs/files.md describes the form)\n");
            return null;
        }

        return TextFile.Read(path, "a sheet", LargestBytes, error) is { } text
            ? Told.Value(ChordGridReader.Read(path, text), error)
            : null;
    }
}
