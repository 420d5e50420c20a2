using System.Globalization;
using System.Text;
using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Options;
using Revoicer.Cli.Settings;
using Revoicer.Cli.Streams;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Harmony;
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
    public static int Of(AuditRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var tower = SettingsKinds.Tower.Open(request.Tower, error);
        var sound = SettingsKinds.Sound.Open(request.Sound, error);
        using var progress = new ProgressLine(error);
        if (tower is null || sound is null || Audit(request, tower.Value, sound.Value, error, progress, cancel) is not { } audit)
        {
            return ExitCode.WrongUsage;
        }

        progress.Clear();
        output.Write(request.Json ? Encoding.UTF8.GetString(AuditJson.Write(audit)) : $"{AuditText.Of(audit)}\n{Cautions.Playing}\n");
        return audit.IsPlayable ? ExitCode.Done : ExitCode.NotPlayable;
    }

    // Null, with every problem told, where there is nothing to audit.
    private static AuditReport? Audit(
        AuditRequest request, Tower tower, Sound sound, TextWriter error, ProgressLine progress, CancellationToken cancel)
    {
        if (request.Passage.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return Exact(request, error) is { } arrangement ? Auditing.Of(arrangement, tower, sound, progress, cancel) : null;
        }

        if (PassageFile.Read(request.Passage, request.Piece, error) is not { } read
            || PassageOptions.WithFeet(read, request.Passage, request.Feet, error) is not { } known
            || PassageOptions.Moved(known, request.Passage, request.Key, request.Sounding ? tower.Transposition : default, error) is not { } passage)
        {
            return null;
        }

        if (!passage.Voices.Any(v => v.HasNotes))
        {
            error.Say($"{request.Passage}: there are no notes in it, so there is nothing to audit; expected music that is written out (a lead sheet becomes that with 'revoicer draft')");
            return null;
        }

        var tune = request.Voice is { } voice ? PassageTune.Of(passage, voice) : null;
        if (request.Voice is not null && tune is null)
        {
            error.Say($"{request.Passage}: {PassageOptions.NoVoice(passage, request.Voice)}");
            return null;
        }

        var tempo = request.PerMinute is { } perMinute ? new Tempo(passage.Sheet.Bars[0].Meter.Beat, perMinute) : (Tempo?)null;
        progress.Say("finding the chords ...");
        var finding = Task.Run(() => HarmonyFinding.Of(passage, cancel), cancel);
        var audit = Auditing.Of(passage, () => finding.GetAwaiter().GetResult().Sheet, tower, sound, tempo, tune, progress, cancel);
        var harmony = finding.GetAwaiter().GetResult();
        return audit with { Told = [.. UnheardText.Of(passage.Sheet.Unheard) is { } unheard ? [unheard] : Array.Empty<string>(), .. OfChords(harmony), .. audit.Told] };
    }

    private static IEnumerable<string> OfChords(FoundHarmony harmony)
    {
        if (harmony.Found > 0)
        {
            yield return $"{harmony.Found} chords were found from the notes, as the file has no symbols there";
        }

        if (harmony.Unclear.Count > 0)
        {
            string[] bars = [.. harmony.Unclear.Select(u => u.Number == 0 ? "the pickup" : string.Create(CultureInfo.InvariantCulture, $"bar {u.Number}")).Distinct()];
            yield return $"no chord was found in {string.Join(", ", bars)}, where nothing is contradicted";
        }
    }

    private static Arrangement? Exact(AuditRequest request, TextWriter error)
    {
        if (request.PerMinute is not null || request.Key is not null || request.Piece is not null || request.Voice is not null || request.Feet is not null || request.Sounding)
        {
            error.Say($"{request.Passage}: an arrangement has its key and its times already, so --tempo, --key, --piece, --voice, --feet and --sounding have nothing to change; leave them out, or make the draft anew with them");
            return null;
        }

        return TextFile.Bytes(request.Passage, "an arrangement", LargestArrangement, error) is { } bytes
            ? Told.Value(ArrangementJson.Read(request.Passage, bytes), error)
            : null;
    }
}
