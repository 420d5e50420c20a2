using System.CommandLine;
using Revoicer.Cli.Drafts;
using Revoicer.Cli.Options;
using Revoicer.LeadSheets;

namespace Revoicer.Cli.Revoices;

/// <summary>revoicer revoice: music that exists keeps its tune and is voiced anew.</summary>
internal static class RevoiceCommand
{
    public static Command Make()
    {
        var passage = PassageOptions.Passage("");
        var close = new Option<double>("--stay-close")
        {
            HelpName = "NUMBER",
            Description = "how many of the chords are to stay as they are, 0 (those that are the best already, the default) to 1 (nine in ten of those that can be played)",
            CustomParser = result => Numbers.Within(result, "--stay-close", "closeness", 0, 1, "") ?? 0,
        };
        var voice = PassageOptions.Voice("the first if it is on top, else the top line");
        var feet = PassageOptions.Feet();
        var name = SheetOptions.Out("write NAME.mid, NAME.txt, NAME.json and NAME.musicxml; by default the music's name with -revoiced behind it, in this folder");
        var (tower, sound, tempo, key) = (SheetOptions.Tower(), SheetOptions.Sound(), SheetOptions.Tempo(), SheetOptions.Key());
        var (sounding, piece, wishes, force) = (PassageOptions.Sounding(), SheetOptions.Piece(), SheetOptions.Wishes(), SheetOptions.Force());
        var (octave, ease, prove, limit) = (OctaveOption.Make(), SearchOptions.EaseTune(), SearchOptions.Prove(), SearchOptions.TimeLimit());
        var command = new Command(
            "revoice",
            "Voice music anew that exists in full: its tune, its rhythm and its chords stay, the bells under it are chosen again, and what moved is told "
            + "bar by bar. The original is not touched.\n\nExample: revoicer revoice leadsheets-demo/passages/harbour-evensong.abc --stay-close 0.5 --sound full")
        {
            passage, close, voice, feet, tower, sound, wishes, name, tempo, key, sounding, piece, octave, ease, prove, limit, force,
        };
        command.SetAction((parsed, cancel) => Task.Run(
            () => RevoiceRun.Of(
                new RevoiceRequest(
                    new DraftRequest(
                        parsed.GetRequiredValue(passage),
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
                        LayoutWish.Above)
                    {
                        Octave = parsed.GetValue(octave),
                        Wishes = parsed.GetValue(wishes),
                    },
                    parsed.GetValue(sounding),
                    parsed.GetValue(close),
                    parsed.GetValue(feet)),
                parsed.InvocationConfiguration.Output,
                parsed.InvocationConfiguration.Error,
                cancel),
            CancellationToken.None));
        return command;
    }
}
