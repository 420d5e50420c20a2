using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.LeadSheets;
using Revoicer.Sounds;

namespace Revoicer.Cli.Drafts;

/// <summary>revoicer draft: a lead sheet becomes a first draft.</summary>
internal static class DraftCommand
{
    private const double SlowestTempo = 20;
    private const double FastestTempo = 300;
    private const double ShortestLimit = 0.1;
    private const double LongestLimit = 86_400;

    // Each takes a search of its own, and in the tenth little is new.
    private const int MostAnother = 9;

    public static Command Make()
    {
        var sheet = new Argument<string>("SHEET") { Description = "the lead sheet, a .chords, .abc, .musicxml, .xml or .mxl file (docs/files.md describes them)" };
        var name = new Option<string?>("--out") { HelpName = "NAME", Description = "write NAME.mid, NAME.txt, NAME.json and NAME.musicxml; by default the sheet's name in this folder" };
        name.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && OutputName.Of(result.Tokens[0].Value, "").Length == 0)
            {
                result.AddError($"--out: '{result.Tokens[0].Value}' leaves no name for the files; expected a name such as first-draft");
            }
        });
        var tempo = new Option<double?>("--tempo")
        {
            HelpName = "NUMBER",
            Description = "beats of the metre a minute, 20 to 300; by default the sheet's tempo, else 84",
            CustomParser = ReadTempo,
        };
        var key = new Option<KeyWish?>("--key")
        {
            HelpName = "KEY",
            Description = "play in another key: a name (G, \"Bb minor\") or semitones with a sign (+2, -3)",
            CustomParser = ReadKey,
        };
        var piece = new Option<int?>("--piece")
        {
            HelpName = "NUMBER",
            Description = "which tune of an ABC file with several, by its X: number; by default the first",
            CustomParser = ReadPiece,
        };
        var voice = new Option<string?>("--voice") { HelpName = "NAME", Description = "which voice has the tune: of an ABC file by its name, of a score by its number or the part's name; by default the first" };
        var ease = new Option<bool>("--ease-tune") { Description = "leave out notes of the tune that come sooner than their bell recovers" };
        var tower = new Option<string>("--tower")
        {
            HelpName = "NAME or FILE",
            Description = "the tower: one that ships, or a file of your own; 'revoicer towers' lists them",
            DefaultValueFactory = _ => ShippedTowers.DefaultName,
        };
        var sound = new Option<string>("--sound")
        {
            HelpName = "NAME or FILE",
            Description = "the sound: one that ships, or a file of your own; 'revoicer sounds' lists them",
            DefaultValueFactory = _ => ShippedSounds.DefaultName,
        };
        var prove = new Option<bool>("--prove") { Description = "take as long as it needs to show that nothing cheaper exists; by default some seconds at most" };
        var limit = new Option<double?>("--time-limit")
        {
            HelpName = "SECONDS",
            Description = "after so many seconds take the best found so far; the result then depends on the machine",
            CustomParser = ReadLimit,
        };
        var layout = new Option<LayoutWish>("--layout")
        {
            HelpName = "above, below or best",
            Description = "the tune over the chords (above, the default), in the pedals and the low manual under them (below), or whichever is cheaper in all (best)",
            CustomParser = ReadLayout,
        };
        var wishes = new Option<string?>("--wishes") { HelpName = "FILE", Description = "what you want of single chords and passages, a file of your own (docs/files.md)" };
        var another = new Option<int>("--another")
        {
            HelpName = "NUMBER",
            Description = "another answer: 1 for one with other bells in a quarter of the chords, 2 for one that differs from both, up to 9",
            CustomParser = ReadAnother,
        };
        var vary = new Option<bool>("--vary-repeats") { Description = "let what is repeated have other bells from the second time on" };
        var force = new Option<bool>("--force") { Description = "replace files that exist" };
        var command = new Command("draft", "Voice a lead sheet for a tower: a score to play from, MIDI to hear it, the arrangement as JSON, and the reasons as text.\n\nExample: revoicer draft leadsheets-demo/ferry-waltz.chords --key F --sound bright --out waltz")
        {
            sheet, tower, sound, wishes, another, vary, name, tempo, key, piece, voice, ease, layout, prove, limit, force,
        };
        command.SetAction((parsed, cancel) => Task.Run(
            () => DraftRun.Of(
                new DraftRequest(
                    parsed.GetRequiredValue(sheet),
                    new SheetChoice(parsed.GetValue(piece), parsed.GetValue(voice)),
                    parsed.GetRequiredValue(tower),
                    parsed.GetRequiredValue(sound),
                    parsed.GetValue(name),
                    parsed.GetValue(tempo),
                    parsed.GetValue(key),
                    parsed.GetValue(ease),
                    parsed.GetValue(prove),
                    parsed.GetValue(limit),
                    parsed.GetValue(force),
                    parsed.GetValue(layout))
                {
                    Wishes = parsed.GetValue(wishes),
                    Another = parsed.GetValue(another),
                    VaryRepeats = parsed.GetValue(vary),
                },
                parsed.InvocationConfiguration.Output,
                parsed.InvocationConfiguration.Error,
                cancel),
            CancellationToken.None));
        return command;
    }

    private static double? ReadTempo(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var tempo)
            && tempo is >= SlowestTempo and <= FastestTempo)
        {
            return tempo;
        }

        result.AddError($"--tempo: '{text}' is no tempo; expected a number from {SlowestTempo} to {FastestTempo} beats a minute, with a point before decimals");
        return null;
    }

    private static double? ReadLimit(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds)
            && seconds is >= ShortestLimit and <= LongestLimit)
        {
            return seconds;
        }

        result.AddError($"--time-limit: '{text}' is no time limit; expected a number from {ShortestLimit.ToString(CultureInfo.InvariantCulture)} to {LongestLimit} seconds, with a point before decimals");
        return null;
    }

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

    private static LayoutWish ReadLayout(ArgumentResult result)
    {
        switch (result.Tokens[0].Value)
        {
            case "above":
                return LayoutWish.Above;
            case "below":
                return LayoutWish.Below;
            case "best":
                return LayoutWish.Best;
            case var text:
                result.AddError($"--layout: '{text}' is no layout; expected above, below or best");
                return default;
        }
    }

    private static int ReadAnother(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= MostAnother)
        {
            return number;
        }

        result.AddError($"--another: '{text}' is no number of another answer; expected a whole number from 1 to {MostAnother}");
        return 0;
    }

    private static KeyWish? ReadKey(ArgumentResult result)
    {
        var wish = KeyWish.Parse(result.Tokens[0].Value);
        if (wish is null)
        {
            result.AddError($"--key: '{result.Tokens[0].Value}' is no key; expected a name such as G, \"Bb minor\", or semitones with a sign, -11 to +11");
        }

        return wish;
    }
}
