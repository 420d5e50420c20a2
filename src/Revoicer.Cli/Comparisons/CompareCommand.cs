using System.CommandLine;
using Revoicer.Cli.Options;
using Revoicer.LeadSheets;
using Revoicer.Sounds;

namespace Revoicer.Cli.Comparisons;

/// <summary>revoicer compare: a lead sheet under several settings, side by side.</summary>
internal static class CompareCommand
{
    private const string Help = """
        Lay settings and keys side by side before choosing: the sheet is drafted under every combination, and one table tells the drafts apart. With --trade-off one sound is drafted a dozen times, each time asking for more carry. Nothing is written but for --plain, --pictures and --write-sounds.

        Example: revoicer compare leadsheets-demo/ferry-waltz.chords --sound bright --sound full --keys -5..6
        """;

    public static Command Make()
    {
        var sheet = new Argument<string>("SHEET or FOLDER") { Description = "the lead sheet, a .chords, .abc, .musicxml, .xml or .mxl file (docs/files.md describes them); of a folder all of these" };
        var (towers, sounds, layouts, keys) = (CompareOptions.Towers(), CompareOptions.Sounds(), CompareOptions.Layouts(), CompareOptions.Keys());
        var (tempo, piece, voice, wishes) = (SheetOptions.Tempo(), SheetOptions.Piece(), SheetOptions.Voice(), SheetOptions.Wishes());
        var octave = OctaveOption.Make();
        var chords = new Option<bool>("--chords") { Description = "under the table, every chord that a draft takes otherwise than the first, both in words, the difference term by term" };
        var bar = CompareOptions.Bar();
        var json = new Option<bool>("--json") { Description = "print the figures as JSON (docs/files.md)" };
        var plain = new Option<bool>("--plain") { Description = "put a plain hand beside the drafts, and write it as NAME-plain.mid, to hear what was gained" };
        var (tradeOff, soundFolder, pictures) = (CompareOptions.TradeOff(), CompareOptions.SoundFolder(), CompareOptions.Pictures());
        var name = SheetOptions.Out("the NAME of what --plain and --pictures write; by default the sheet's name in this folder");
        var force = SheetOptions.Force();
        var command = new Command("compare", Help) { sheet, sounds, towers, layouts, keys, octave, wishes, tempo, piece, voice, chords, bar, plain, tradeOff, soundFolder, pictures, name, force, json };
        command.SetAction((parsed, cancel) => Task.Run(
            () => CompareRun.Of(
                new CompareRequest(
                    parsed.GetRequiredValue(sheet),
                    new SheetChoice(parsed.GetValue(piece), parsed.GetValue(voice)),
                    parsed.GetValue(towers) ?? [],
                    parsed.GetValue(sounds) is { Length: > 0 } named ? named : parsed.GetValue(tradeOff) ? [ShippedSounds.DefaultName] : [],
                    parsed.GetValue(layouts) ?? [],
                    parsed.GetValue(keys) ?? KeyRange.Written)
                {
                    PerMinute = parsed.GetValue(tempo),
                    Octave = parsed.GetValue(octave),
                    Wishes = parsed.GetValue(wishes),
                    Chords = parsed.GetValue(chords),
                    Bar = parsed.GetValue(bar),
                    AsJson = parsed.GetValue(json),
                    Plain = parsed.GetValue(plain),
                    TradeOff = parsed.GetValue(tradeOff),
                    SoundFolder = parsed.GetValue(soundFolder),
                    Pictures = parsed.GetValue(pictures),
                    Out = parsed.GetValue(name),
                    Force = parsed.GetValue(force),
                },
                parsed.InvocationConfiguration.Output,
                parsed.InvocationConfiguration.Error,
                cancel),
            CancellationToken.None));
        return command;
    }
}
