using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Revoicer.Cli.Options;
using Revoicer.LeadSheets;

namespace Revoicer.Cli.Drafts;

/// <summary>revoicer draft: a lead sheet becomes a first draft.</summary>
internal static class DraftCommand
{
    // Each takes a search of its own, and in the tenth little is new.
    private const int MostAnother = 9;

    public static Command Make()
    {
        var sheet = new Argument<string>("SHEET or FOLDER") { Description = "the lead sheet, a .chords, .abc, .musicxml, .xml or .mxl file (docs/files.md describes them); of a folder all of these" };
        var name = SheetOptions.Out("write NAME.mid, NAME.txt, NAME.json and NAME.musicxml; by default the sheet's name in this folder; for a folder of sheets the folder that gets the files");
        var tempo = SheetOptions.Tempo();
        var key = SheetOptions.Key(canBeBest: true);
        var piece = SheetOptions.Piece();
        var voice = SheetOptions.Voice();
        var ease = SearchOptions.EaseTune();
        var tower = SheetOptions.Tower();
        var sound = SheetOptions.Sound();
        var prove = SearchOptions.Prove();
        var limit = SearchOptions.TimeLimit();
        var layout = SheetOptions.Layout();
        var octave = OctaveOption.Make();
        var wishes = SheetOptions.Wishes();
        var another = new Option<int>("--another")
        {
            HelpName = "NUMBER",
            Description = "another answer: 1 for one with other bells in a quarter of the chords, 2 for one that differs from both, up to 9",
            CustomParser = ReadAnother,
        };
        var vary = new Option<bool>("--vary-repeats") { Description = "let what is repeated have other bells from the second time on" };
        var force = SheetOptions.Force();
        var command = new Command("draft", "Voice a lead sheet for a tower: a score to play from, MIDI to hear it, the arrangement as JSON, and the reasons as text.\n\nExample: revoicer draft leadsheets-demo/ferry-waltz.chords --key F --sound bright --out waltz")
        {
            sheet, tower, sound, wishes, another, vary, name, tempo, key, piece, voice, ease, layout, octave, prove, limit, force,
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
                    Octave = parsed.GetValue(octave),
                    Another = parsed.GetValue(another),
                    VaryRepeats = parsed.GetValue(vary),
                },
                parsed.InvocationConfiguration.Output,
                parsed.InvocationConfiguration.Error,
                cancel),
            CancellationToken.None));
        return command;
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
}
