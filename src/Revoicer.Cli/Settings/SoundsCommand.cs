using System.CommandLine;
using System.Text;
using Revoicer.Sounds;

namespace Revoicer.Cli.Settings;

/// <summary>revoicer sounds: the sound settings that ship, and the player's own.</summary>
internal static class SoundsCommand
{
    public static Command Make() => SettingsCommand.Make(
        "sounds",
        "Show the sound settings that ship, or check a sound file of your own.\n\nExample: revoicer sounds my-sound.toml",
        Shipped.Sounds,
        Overview,
        Describe);

    private static string Overview()
    {
        var text = new StringBuilder("Sounds that ship; 'revoicer draft SHEET --sound NAME' asks for one:\n\n");
        foreach (var name in ShippedSounds.Names)
        {
            // The first line of each file says what it is for.
            text.Append($"  {name,-10} {ShippedSounds.Text(name).Split('\n')[0].TrimStart('#', ' ')}\n");
        }

        return text
            .Append("\nFor a sound of your own, copy the file that 'revoicer sounds balanced --show-file' shows and change it;\n")
            .Append("docs/sounds.md says what each word does.\n")
            .ToString();
    }

    private static string Describe(Sound sound)
    {
        var text = new StringBuilder($"{sound.Name}: can be read; its words as understood\n");
        foreach (var (part, word, value) in SoundFile.Words(sound))
        {
            text.Append(FormattableString.Invariant($"  {part + "." + word,-24} {value:0.###}\n"));
        }

        return text.ToString();
    }
}
