using System.Text;
using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Options;
using Revoicer.Cli.Settings;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Writing.Json;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Audits;

/// <summary>Carries out an audit command.</summary>
internal static class AuditRun
{
    private const int LargestArrangement = 32 * 1024 * 1024;

    /// <summary>Reads, audits, tells; the exit code.</summary>
    public static int Of(AuditRequest request, TextWriter output, TextWriter error)
    {
        var tower = SettingsKinds.Tower.Open(request.Tower, error);
        var sound = SettingsKinds.Sound.Open(request.Sound, error);
        if (tower is null || sound is null || Audit(request, tower.Value, sound.Value, error) is not { } audit)
        {
            return ExitCode.WrongUsage;
        }

        output.Write(request.Json ? Encoding.UTF8.GetString(AuditJson.Write(audit)) : $"{AuditText.Of(audit)}\n{Cautions.Playing}\n");
        return audit.IsPlayable ? ExitCode.Done : ExitCode.NotPlayable;
    }

    // Null, with every problem told, where there is nothing to audit.
    private static AuditReport? Audit(AuditRequest request, Tower tower, Sound sound, TextWriter error)
    {
        if (request.Passage.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return Exact(request, error) is { } arrangement ? Auditing.Of(arrangement, tower, sound) : null;
        }

        if (PassageFile.Read(request.Passage, request.Piece, error) is not { } read
            || InKey(AsPressed(read, request, tower), request.Key, request.Passage, error) is not { } passage)
        {
            return null;
        }

        if (!passage.Voices.Any(v => v.HasNotes))
        {
            error.Write($"{request.Passage}: there are no notes in it, so there is nothing to audit; expected music that is written out (a lead sheet becomes that with 'revoicer draft')\n");
            return null;
        }

        var tempo = request.PerMinute is { } perMinute ? new Tempo(passage.Sheet.Bars[0].Meter.Beat, perMinute) : (Tempo?)null;
        return Auditing.Of(passage, passage.Sheet, tower, sound, tempo);
    }

    private static Arrangement? Exact(AuditRequest request, TextWriter error)
    {
        if (request.PerMinute is not null || request.Key is not null || request.Piece is not null || request.Sounding)
        {
            error.Write($"{request.Passage}: an arrangement has its key and its times already, so --tempo, --key, --piece and --sounding have nothing to change; leave them out, or make the draft anew with them\n");
            return null;
        }

        return TextFile.Bytes(request.Passage, "an arrangement", LargestArrangement, error) is { } bytes
            ? Told.Value(ArrangementJson.Read(request.Passage, bytes), error)
            : null;
    }

    private static Passage AsPressed(Passage passage, AuditRequest request, Tower tower) =>
        request.Sounding ? Moved(passage, new KeyWish.Higher(-tower.Transposition.Semitones)) : passage;

    // The passage in the key asked for; null, with a sentence told, where it cannot be moved there.
    private static Passage? InKey(Passage passage, KeyWish? wish, string path, TextWriter error)
    {
        if (wish is null)
        {
            return passage;
        }

        if (wish.Apply(passage.Sheet) is (null, var sentence))
        {
            error.Write($"{path}: {sentence}\n");
            return null;
        }

        return Moved(passage, wish);
    }

    // A wish that the sheet of the passage allows.
    private static Passage Moved(Passage passage, KeyWish wish) => new(
        wish.Apply(passage.Sheet).Sheet!,
        passage.Voices
            .Select(voice => voice with { Bars = wish.Apply(passage.WithTune(voice)).Sheet!.Bars.Select(bar => bar.Notes).ToItems() })
            .ToItems());
}
