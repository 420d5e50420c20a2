using System.CommandLine;
using System.Text;
using Revoicer.Bells;
using Revoicer.Playing;

namespace Revoicer.Cli.Settings;

/// <summary>revoicer towers: the towers that ship, the player's own, and what to mind before playing.</summary>
internal static class TowersCommand
{
    public static Command Make() => SettingsCommand.Make(
        "towers",
        "Show the towers that ship, or check a tower file of your own.\n\nExample: revoicer towers my-tower.toml",
        Shipped.Towers,
        Overview,
        Describe);

    private static string Overview()
    {
        var text = new StringBuilder("Towers that ship; 'revoicer draft SHEET --tower NAME' arranges for one:\n\n");
        foreach (var name in ShippedTowers.Names)
        {
            var tower = ShippedTowers.Named(name);
            text.Append($"  {name,-16} {tower.Bells.Count} bells, {tower.Bells[0].Note} to {tower.Bells[^1].Note}{Missing(tower)}\n");
            text.Append($"  {"",-16} pedals {tower.PedalsFrom} to {tower.PedalsTo}; {Sounds(tower)}\n");
        }

        return text
            .Append("\nFor a tower of your own, copy the file that 'revoicer towers harbour-47 --show-file' shows and change it;\n")
            .Append("docs/files.md has every word, measured partials and your own limits of reach among them.\n\n")
            .Append(Cautions.InFull)
            .ToString();
    }

    private static string Describe(Tower tower)
    {
        var measured = tower.Bells.Count(b => b.IsMeasured);
        var text = new StringBuilder($"{tower.Name}\n");
        text.Append($"  bells    {tower.Bells.Count}, {tower.Bells[0].Note} to {tower.Bells[^1].Note} as read{Missing(tower)}\n");
        text.Append($"  pedals   {tower.PedalsFrom} to {tower.PedalsTo}\n");
        text.Append($"  sounds   {Sounds(tower)}\n");
        text.Append($"  partials {(measured == 0 ? "none measured: all bells sound as the default bell" : $"measured on {measured} of {tower.Bells.Count} bells, the rest as the default bell")}\n");
        foreach (var own in tower.Limits)
        {
            var row = PlayingLimits.Shipped.Row(own.Key);
            text.Append(FormattableString.Invariant($"  limit    {own.Key}: hard {own.Hard ?? row.Hard:0.##}, soft {own.Soft ?? row.Soft:0.##} (shipped: {row.Hard:0.##}, {row.Soft:0.##})\n"));
        }

        return text.ToString();
    }

    private static string Missing(Tower tower) => tower.Missing.Any() ? $", without {string.Join(", ", tower.Missing)}" : "";

    private static string Sounds(Tower tower) => tower.Transposition.Semitones switch
    {
        0 => "sounds as written",
        12 => "sounds an octave higher than written",
        24 => "sounds two octaves higher than written",
        > 0 and var up => $"sounds {up} semitones higher than written",
        var down => $"sounds {-down} semitones lower than written",
    };
}
