using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Revoicer.Bells;
using Revoicer.Sounds;

namespace Revoicer.Cli.Options;

/// <summary>Options that name several settings to be laid side by side.</summary>
internal static class CompareOptions
{
    private const int HighestBar = 20_000;

    /// <summary>Names or files of towers; the default tower where none is named.</summary>
    public static Option<string[]> Towers() => new("--tower")
    {
        HelpName = "NAME or FILE",
        Description = $"a tower: one that ships, or a file of your own; may be given several times; by default {ShippedTowers.DefaultName}",
    };

    /// <summary>Names or files of sounds; those that ship where none is named.</summary>
    public static Option<string[]> Sounds() => new("--sound")
    {
        HelpName = "NAME or FILE",
        Description = $"a sound: one that ships, or a file of your own; may be given several times; by default {string.Join(", ", ShippedSounds.Names)}",
    };

    /// <summary>Where the tune may lie; above where none is named.</summary>
    public static Option<LayoutWish[]> Layouts() => new("--layout")
    {
        HelpName = "above, below or best",
        Description = "where the tune lies: above (the default), below, or best for whichever is cheaper; may be given several times",
        CustomParser = result => [.. result.Tokens.Select(token => SheetOptions.LayoutOf(token.Value, result))],
    };

    /// <summary>The keys; null, for the written one alone, where it is left out.</summary>
    public static Option<KeyRange?> Keys() => new("--keys")
    {
        HelpName = "FROM..TO",
        Description = "several keys, in semitones from the written one: -5..6 is the full round; by default the written one",
        CustomParser = ReadKeys,
    };

    /// <summary>The number of a bar; null where it is left out.</summary>
    public static Option<int?> Bar() => new("--bar")
    {
        HelpName = "NUMBER",
        Description = "under the table, how every setting takes the chords of this bar",
        CustomParser = ReadBar,
    };

    /// <summary>Whether clash is traded off against carry.</summary>
    public static Option<bool> TradeOff() => new("--trade-off")
    {
        Description = $"lay clash against carry instead: drafts of one sound (by default {ShippedSounds.DefaultName}), each the cheapest whose chords carry at least so far, and what each gives up",
    };

    /// <summary>Whether pictures are drawn.</summary>
    public static Option<bool> Pictures() => new("--pictures")
    {
        Description = "draw it, as NAME-....svg and NAME-....png: the clash over the bars, with several keys a chart of them, with --bar its chords; or, with --trade-off, clash against carry",
    };

    /// <summary>The folder for the sounds of a trade-off; null where it is left out.</summary>
    public static Option<string?> SoundFolder() => new("--write-sounds")
    {
        HelpName = "FOLDER",
        Description = "with --trade-off, write the sound of each draft into this folder: 'draft --sound' makes that draft again",
    };

    private static KeyRange? ReadKeys(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        var keys = KeyRange.Parse(text);
        if (keys is null)
        {
            result.AddError($"--keys: '{text}' is no range of keys; expected the lowest and the highest in semitones from the written key, -11 to 11, such as -5..6");
        }

        return keys;
    }

    private static int? ReadBar(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var bar) && bar <= HighestBar)
        {
            return bar;
        }

        result.AddError($"--bar: '{text}' is no number of a bar; expected a whole number, 0 for a pickup");
        return null;
    }
}
