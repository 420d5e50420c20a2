using System.CommandLine;
using Revoicer.Bells;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Settings;

/// <summary>revoicer towers: the towers that ship, and checks of the player's own.</summary>
internal static class TowersCommand
{
    public static Command Make() => new SettingsCommand<Tower>(SettingsKinds.Tower, List, TowerText.Of).Make(
        "towers",
        "List the towers that ship, show one, or check a tower file of your own.\n\nExample: revoicer towers quay.toml\n\n" + Cautions.Full);

    private static string List()
    {
        var towers = ShippedTowers.Names
            .Select(name => $"{name}\n{TowerText.InShort(ShippedTowers.Named(name), ShippedTowers.About(name), indent: 2)}\n");
        return $"""
            {string.Concat(towers)}A draft is made for {ShippedTowers.DefaultName} unless another is named:
              revoicer draft SHEET --tower {ShippedTowers.Names[0]}

            To describe your own tower, print one that is like it into a file, change that, and have it checked:
              revoicer towers {ShippedTowers.DefaultName} --print > own.toml
              revoicer towers own.toml
              revoicer draft SHEET --tower own.toml
            docs/files.md describes every word: also the pitch, the limits of reach and time, and partials measured on your bells.

            {Cautions.Full}

            """;
    }
}
