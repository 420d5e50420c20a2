using System.CommandLine;
using Revoicer.Cli.Streams;
using Revoicer.LeadSheets;
using Revoicer.Music;

namespace Revoicer.Cli.Options;

/// <summary>Options that commands over music that exists have in common, and what they do to it.</summary>
internal static class PassageOptions
{
    /// <summary>The music's file.</summary>
    /// <param name="besides">Kinds of file that are read besides, before the others; may be empty.</param>
    public static Argument<string> Passage(string besides) => new("PASSAGE")
    {
        Description = $"the music: {besides}a .mid, .midi, .abc, .musicxml, .xml or .mxl file (docs/files.md describes them)",
    };

    /// <summary>Whether the file has the pitch that is heard.</summary>
    public static Option<bool> Sounding() => new("--sounding")
    {
        Description = "the file has the pitch that is heard, as the MIDI files of drafts have; by default that which is read and pressed",
    };

    /// <summary>The voice that has the tune; null where it is left out.</summary>
    /// <param name="otherwise">What holds where it is left out.</param>
    public static Option<string?> Voice(string otherwise) => new("--voice")
    {
        HelpName = "NAME",
        Description = $"which voice has the tune, by its name or its number; by default {otherwise}",
    };

    /// <summary>The voice that is written for the feet; null where it is left out.</summary>
    public static Option<string?> Feet() => new("--feet")
    {
        HelpName = "VOICE",
        Description = "which voice is written for the feet, by its name or its number; by default what is named for feet or pedals ('Ped.')",
    };

    /// <summary>The passage with the voice for the feet known as such; null, with a sentence told, where no voice is so called.</summary>
    public static Passage? WithFeet(Passage passage, string path, string? feet, TextWriter error)
    {
        if (passage.WithFeet(feet) is { } known)
        {
            return known;
        }

        error.Say($"{path}: {NoVoice(passage, feet)}");
        return null;
    }

    /// <summary>That no voice of a passage is called as asked, and what would do.</summary>
    public static string NoVoice(Passage passage, string? asked) =>
        $"there is no voice '{asked}' in it; expected one of {string.Join(", ", passage.Voices.Select(v => $"'{v.Name}'"))}, or its number from 1";

    /// <summary>The passage as it is pressed, in the key asked for; null, with a sentence told, where it cannot be moved there.</summary>
    /// <param name="passage">The passage as the file has it.</param>
    /// <param name="path">The file.</param>
    /// <param name="key">The key asked for; null for its own.</param>
    /// <param name="sounds">What it sounds higher than it is to be pressed; nothing where it has the pitch that is pressed.</param>
    /// <param name="error">Where the sentence goes.</param>
    public static Passage? Moved(Passage passage, string path, KeyWish? key, Transposition sounds, TextWriter error)
    {
        if (key is { } wish && wish.Apply(passage.Sheet) is (null, var sentence))
        {
            error.Say($"{path}: {sentence}");
            return null;
        }

        var pressed = sounds.Semitones == 0 ? passage : passage.Moved(sheet => sheet.Higher(-sounds.Semitones));
        return key is null ? pressed : pressed.Moved(sheet => key.Apply(sheet).Sheet!);
    }
}
