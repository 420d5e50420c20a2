using System.CommandLine;
using Revoicer.Cli.Options;

namespace Revoicer.Cli.Audits;

/// <summary>revoicer audit: what music that exists is like on a tower.</summary>
internal static class AuditCommand
{
    public static Command Make()
    {
        var passage = PassageOptions.Passage("an arrangement of this program (.json), or ");
        var tower = SheetOptions.Tower();
        var sound = SheetOptions.Sound();
        var tempo = SheetOptions.Tempo();
        var key = SheetOptions.Key();
        var piece = SheetOptions.Piece();
        var voice = PassageOptions.Voice("none, so that all notes have the touch of chords");
        var feet = PassageOptions.Feet();
        var sounding = PassageOptions.Sounding();
        var json = new Option<bool>("--json") { Description = "print the report as JSON, with all digits (docs/files.md)" };
        var command = new Command(
            "audit",
            "Say of music that exists what it is like on a tower: what cannot be played and what would do, how it clashes bar by bar and why. "
            + "It changes nothing and writes no file.\n\nExample: revoicer audit first-draft.json --tower lighthouse-49")
        {
            passage, tower, sound, tempo, key, piece, voice, feet, sounding, json,
        };
        command.SetAction((parsed, cancel) => Task.Run(
            () => AuditRun.Of(
                new AuditRequest(
                    parsed.GetRequiredValue(passage),
                    parsed.GetRequiredValue(tower),
                    parsed.GetRequiredValue(sound),
                    parsed.GetValue(tempo),
                    parsed.GetValue(key),
                    parsed.GetValue(piece),
                    parsed.GetValue(voice),
                    parsed.GetValue(feet),
                    parsed.GetValue(sounding),
                    parsed.GetValue(json)),
                parsed.InvocationConfiguration.Output,
                parsed.InvocationConfiguration.Error,
                cancel),
            cancel));
        return command;
    }
}
