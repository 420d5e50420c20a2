using Revoicer.Cli.Streams;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.Midi;
using Revoicer.LeadSheets.MusicXml;

namespace Revoicer.Cli.Files;

/// <summary>Reads a passage from disk, its kind by the ending of its name.</summary>
internal static class PassageFile
{
    private const int LargestBytes = 4 * 1024 * 1024;

    private static readonly string[] MidiEndings = [".mid", ".midi"];

    /// <summary>The passage; null, with every problem told, where it cannot be read. Warnings are told as well.</summary>
    /// <param name="path">The file.</param>
    /// <param name="piece">Which tune of an ABC file, by its number; null for the first.</param>
    /// <param name="error">Where problems and warnings go.</param>
    public static Passage? Read(string path, int? piece, TextWriter error)
    {
        if (path.EndsWith(".abc", StringComparison.OrdinalIgnoreCase))
        {
            return SheetFile.AbcText(path, error) is { } text ? Told.Value(AbcReader.Passage(path, text, new SheetChoice(piece)), error) : null;
        }

        if (SheetFile.IsScore(path))
        {
            return TextFile.Bytes(path, "a score", LargestBytes, error) is { } bytes ? Told.Value(MusicXmlReader.Passage(path, bytes), error) : null;
        }

        if (MidiEndings.Any(ending => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase)))
        {
            return TextFile.Bytes(path, "a MIDI file", LargestBytes, error) is { } bytes ? Told.Value(MidiReader.Read(path, bytes), error) : null;
        }

        var beside = path.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? "; an arrangement's score, the .musicxml beside it, is one" : "";
        error.Say($"{path}: not a kind of file that holds a passage; expected a .mid, .midi, .abc, .musicxml, .xml or .mxl file (docs/files.md describes them){beside}");
        return null;
    }
}
