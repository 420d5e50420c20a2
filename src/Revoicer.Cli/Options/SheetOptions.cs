using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Sounds;

namespace Revoicer.Cli.Options;

/// <summary>Options that commands over a sheet have in common: each is read in one way and described in the same words.</summary>
internal static class SheetOptions
{
    private const double SlowestTempo = 20;
    private const double FastestTempo = 300;

    /// <summary>The tower's name or file; the default tower where it is left out.</summary>
    public static Option<string> Tower() => new("--tower")
    {
        HelpName = "NAME or FILE",
        Description = "the tower: one that ships, or a file of your own; 'revoicer towers' lists them",
        DefaultValueFactory = _ => ShippedTowers.DefaultName,
    };

    /// <summary>The sound's name or file; the default sound where it is left out.</summary>
    public static Option<string> Sound() => new("--sound")
    {
        HelpName = "NAME or FILE",
        Description = "the sound: one that ships, or a file of your own; 'revoicer sounds' lists them",
        DefaultValueFactory = _ => ShippedSounds.DefaultName,
    };

    /// <summary>Beats of the metre a minute; null where it is left out.</summary>
    public static Option<double?> Tempo() => new("--tempo")
    {
        HelpName = "NUMBER",
        Description = "beats of the metre a minute, 20 to 300; by default the sheet's tempo, else 84",
        CustomParser = result => Numbers.Within(result, "--tempo", "tempo", SlowestTempo, FastestTempo, " beats a minute"),
    };

    /// <summary>The key asked for; null where it is left out.</summary>
    /// <param name="canBeBest">Whether the command can look for the best key.</param>
    public static Option<KeyWish?> Key(bool canBeBest = false) => new("--key")
    {
        HelpName = "KEY",
        Description = "play in another key: a name (G, \"Bb minor\") or semitones with a sign (+2, -3)" + (canBeBest ? ", or best for the one of all twelve that suits the tower (takes a draft in each)" : ""),
        CustomParser = result => ReadKey(result, canBeBest),
    };

    /// <summary>The number of a tune in an ABC file; null where it is left out.</summary>
    public static Option<int?> Piece() => new("--piece")
    {
        HelpName = "NUMBER",
        Description = "which tune of an ABC file with several, by its X: number; by default the first",
        CustomParser = ReadPiece,
    };

    /// <summary>The voice that has the tune; null where it is left out.</summary>
    public static Option<string?> Voice() => new("--voice")
    {
        HelpName = "NAME",
        Description = "which voice has the tune: of an ABC file by its name, of a score by its number or the part's name; by default the first",
    };

    /// <summary>Where the tune lies; above where it is left out.</summary>
    public static Option<LayoutWish> Layout() => new("--layout")
    {
        HelpName = "above, below or best",
        Description = "the tune over the chords (above, the default), in the pedals and the low manual under them (below), or whichever is cheaper in all (best)",
        CustomParser = result => LayoutOf(result.Tokens[0].Value, result),
    };

    /// <summary>The file of the player's wishes; null where it is left out.</summary>
    public static Option<string?> Wishes() => new("--wishes")
    {
        HelpName = "FILE",
        Description = "what you want of single chords and passages, a file of your own (docs/files.md)",
    };

    /// <summary>The name of what is written, which leaves something for a file's name; null where it is left out.</summary>
    public static Option<string?> Out(string description)
    {
        var name = new Option<string?>("--out") { HelpName = "NAME", Description = description };
        name.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && !OutputName.LeavesName(result.Tokens[0].Value))
            {
                result.AddError($"--out: '{result.Tokens[0].Value}' leaves no name for the files; expected a name such as first-draft");
            }
        });
        return name;
    }

    /// <summary>Whether files that exist may be replaced.</summary>
    public static Option<bool> Force() => new("--force") { Description = "replace files that exist" };

    private static int? ReadPiece(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        result.AddError($"--piece: '{text}' is no number of a tune; expected the whole number behind its X:");
        return null;
    }

    /// <summary>The layout of a word; where there is none of that name an error is added and what comes back means nothing.</summary>
    internal static LayoutWish LayoutOf(string word, ArgumentResult result)
    {
        switch (word)
        {
            case "above":
                return LayoutWish.Above;
            case "below":
                return LayoutWish.Below;
            case "best":
                return LayoutWish.Best;
            default:
                result.AddError($"--layout: '{word}' is no layout; expected above, below or best");
                return default;
        }
    }

    private static KeyWish? ReadKey(ArgumentResult result, bool canBeBest)
    {
        var wish = KeyWish.Parse(result.Tokens[0].Value);
        if (wish is not null && (canBeBest || wish is not KeyWish.Best))
        {
            return wish;
        }

        result.AddError($"--key: '{result.Tokens[0].Value}' is no key; expected a name such as G, \"Bb minor\", or semitones with a sign, -11 to +11{(canBeBest ? ", or best" : "")}");
        return null;
    }
}
