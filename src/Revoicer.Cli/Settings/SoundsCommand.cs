using System.CommandLine;
using Revoicer.Sounds;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Settings;

/// <summary>revoicer sounds: the sounds that ship, and checks of the player's own.</summary>
internal static class SoundsCommand
{
    public static Command Make() => new SettingsCommand<Sound>(SettingsKinds.Sound, List, SoundText.Of).Make(
        "sounds",
        "List the sounds that ship, show every weight of one, or check a sound file of your own.\n\nExample: revoicer sounds bright");

    private static string List()
    {
        var sounds = ShippedSounds.Names.Select(name => SoundText.InShort(name, ShippedSounds.About(name), indent: 2) + "\n");
        return $"""
            {string.Concat(sounds)}A draft is made in the sound {ShippedSounds.DefaultName} unless another is named:
              revoicer draft SHEET --sound {ShippedSounds.Names[0]}

            To make your own sound, print one that is like it into a file, change that, and have it checked:
              revoicer sounds {ShippedSounds.DefaultName} --print > own.toml
              revoicer sounds own.toml
              revoicer draft SHEET --sound own.toml
            docs/sounds.md says of every word what raising it does.

            """;
    }
}
