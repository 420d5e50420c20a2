using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.LeadSheets.MusicXml;

namespace Revoicer.Cli.Files;

/// <summary>Reads a lead sheet from disk, its kind by the ending of its name.</summary>
internal static class SheetFile
{
    private const int LargestBytes = 4 * 1024 * 1024;

    private static readonly string[] ScoreEndings = [".musicxml", ".xml", ".mxl"];

    /// <summary>The sheet; null, with every problem told, where it cannot be read. Warnings are told as well.</summary>
    /// <param name="path">The file.</param>
    /// <param name="choice">Which tune of an ABC file, and which voice of it or of a score.</param>
    /// <param name="error">Where problems and warnings go.</param>
    public static LeadSheet? Read(string path, SheetChoice choice, TextWriter error)
    {
        if (path.EndsWith(".chords", StringComparison.OrdinalIgnoreCase))
        {
            if (choice != SheetChoice.First)
            {
                error.Write($"warning: {path}: --piece and --voice choose from an ABC file and change nothing here\n");
            }

            return TextFile.Read(path, "a sheet", LargestBytes, error) is { } text
                ? Told.Value(ChordGridReader.Read(path, text), error)
                : null;
        }

        if (path.EndsWith(".abc", StringComparison.OrdinalIgnoreCase))
        {
            return TextFile.Bytes(path, "a sheet", LargestBytes, error) is { } bytes ? Abc(path, bytes, choice, error) : null;
        }

        if (ScoreEndings.Any(ending => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase)))
        {
            return TextFile.Bytes(path, "a score", LargestBytes, error) is { } bytes ? Told.Value(MusicXmlReader.Read(path, bytes, choice.Voice), error) : null;
        }

        error.Write($"{path}: not a kind of file that can be read; expected a .chords, .abc, .musicxml, .xml or .mxl file (docs/files.md describes them)\n");
        return null;
    }

    private static LeadSheet? Abc(string path, byte[] bytes, SheetChoice choice, TextWriter error)
    {
        if (SheetBytes.IsUtf16(bytes))
        {
            error.Write($"{path}: the file is UTF-16 text; expected it saved as UTF-8\n");
            return null;
        }

        var decoded = SheetBytes.Decode(bytes);
        if (decoded.Warning(path) is { } warning)
        {
            error.Write($"warning: {warning}");
        }

        return Told.Value(AbcReader.Read(path, decoded.Text, choice), error);
    }
}
