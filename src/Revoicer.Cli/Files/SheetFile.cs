using Revoicer.Cli.Streams;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.LeadSheets.MusicXml;
using Revoicer.Text;

namespace Revoicer.Cli.Files;

/// <summary>Reads a lead sheet from disk, its kind by the ending of its name.</summary>
internal static class SheetFile
{
    private const int LargestBytes = 4 * 1024 * 1024;

    private static readonly string[] ScoreEndings = [".musicxml", ".xml", ".mxl"];

    /// <summary>The kinds of file that can be read, in words.</summary>
    public const string Kinds = ".chords, .abc, .musicxml, .xml or .mxl";

    /// <summary>Whether a file is of a kind that can be read, by the ending of its name.</summary>
    public static bool IsSheet(string path) =>
        IsScore(path) || new[] { ".chords", ".abc" }.Any(ending => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase));

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
                error.Say($"warning: {path}: --piece and --voice choose from an ABC file and change nothing here");
            }

            return TextFile.Read(path, "a sheet", LargestBytes, error) is { } text
                ? Told.Value(ChordGridReader.Read(path, text), error)
                : null;
        }

        if (path.EndsWith(".abc", StringComparison.OrdinalIgnoreCase))
        {
            return AbcText(path, error) is { } text ? Told.Value(AbcReader.Read(path, text, choice), error) : null;
        }

        if (IsScore(path))
        {
            return TextFile.Bytes(path, "a score", LargestBytes, error) is { } bytes ? Told.Value(MusicXmlReader.Read(path, bytes, choice.Voice), error) : null;
        }

        error.Say($"{path}: not a kind of file that can be read; expected a {Kinds} file (docs/files.md describes them)");
        return null;
    }

    /// <summary>Whether a name has the ending of a score.</summary>
    public static bool IsScore(string path) => ScoreEndings.Any(ending => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase));

    /// <summary>The text of an ABC file; null, with a sentence told, where it cannot be had.</summary>
    /// <param name="path">The file.</param>
    /// <param name="error">Where sentences and warnings go.</param>
    public static string? AbcText(string path, TextWriter error)
    {
        if (TextFile.Bytes(path, "a sheet", LargestBytes, error) is not { } bytes)
        {
            return null;
        }

        if (SheetBytes.IsUtf16(bytes))
        {
            error.Say($"{path}: the file is UTF-16 text; expected it saved as UTF-8");
            return null;
        }

        var decoded = SheetBytes.Decode(bytes);
        if (decoded.Warning(path) is { } warning)
        {
            error.Write($"warning: {warning}");
        }

        return decoded.Text;
    }
}
