using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Revoicer.LeadSheets;

namespace Revoicer.Cli.Options;

/// <summary>Options that commands over music that exists have in common, and what they do to it.</summary>
internal static class PassageOptions
{
    private const int FurthestOctave = 3;
    private const int OctaveSemitones = 12;

    /// <summary>The music's file.</summary>
    /// <param name="besides">Kinds of file that are read besides, before the others; may be empty.</param>
    public static Argument<string> Passage(string besides) => new("PASSAGE")
    {
        Description = $"the music: {besides}a .mid, .midi, .abc, .musicxml, .xml or .mxl file (docs/files.md describes them)",
    };

    /// <summary>By how many octaves the music is moved; 0 where it is left out.</summary>
    public static Option<int> Octave() => new("--octave")
    {
        HelpName = "NUMBER",
        Description = "move the music by octaves, -3 to 3: -1 for a MIDI file at the pitch that is heard from a tower that sounds an octave higher than written",
        CustomParser = ReadOctave,
    };

    /// <summary>The passage in the key asked for, moved by octaves; null, with a sentence told, where it cannot be moved there.</summary>
    public static Passage? Moved(Passage passage, string path, KeyWish? key, int octaves, TextWriter error)
    {
        var sentence = key is KeyWish.Best
            ? "--key best is for lead sheets, whose keys are tried one after another; name a key, or give semitones, such as --key +2"
            : key is { } wish && wish.Apply(passage.Sheet) is (null, var why) ? why : null;
        if (sentence is not null)
        {
            error.Write($"{path}: {sentence}\n");
            return null;
        }

        var inKey = key is null ? passage : passage.Moved(sheet => key.Apply(sheet).Sheet!);
        return octaves == 0 ? inKey : inKey.Moved(sheet => sheet.Moved(sheet.Key, 0, octaves * OctaveSemitones));
    }

    private static int ReadOctave(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var octaves) && Math.Abs(octaves) <= FurthestOctave)
        {
            return octaves;
        }

        result.AddError($"--octave: '{text}' is no number of octaves; expected a whole number from -{FurthestOctave} to {FurthestOctave}");
        return 0;
    }
}
