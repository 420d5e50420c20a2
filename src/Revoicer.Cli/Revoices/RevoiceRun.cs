using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Cli.Drafts;
using Revoicer.Cli.Files;
using Revoicer.Cli.Options;
using Revoicer.Cli.Streams;
using Revoicer.LeadSheets;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Revoices;

/// <summary>Carries out a revoice command.</summary>
internal static class RevoiceRun
{
    /// <summary>Reads, voices anew, writes; the exit code.</summary>
    public static int Of(RevoiceRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var asked = request.Draft with { Out = request.Draft.Out ?? Path.GetFileNameWithoutExtension(request.Draft.Sheet) + "-revoiced" };
        using var deadline = asked.Deadline();
        var taken = DraftSettings.Open(asked, error);
        if (taken is null
            || PassageFile.Read(asked.Sheet, asked.Choice.Piece, error) is not { } read
            || PassageOptions.WithFeet(read, asked.Sheet, request.Feet, error) is not { } known
            || PassageOptions.Moved(known, asked.Sheet, asked.Key, request.Sounding ? taken.Tower.Value.Transposition : default, error) is not { } passage
            || Parted(passage, asked, error) is not { } revoicing)
        {
            return ExitCode.WrongUsage;
        }

        if (!DraftRun.CanWrite(asked, taken, error))
        {
            return ExitCode.NotWritten;
        }

        using var progress = new ProgressLine(error);
        var result = SheetDraft.Of(revoicing.Sheet, asked, taken, wish => revoicing.Close(wish, request.StayClose), deadline, progress, cancel);
        progress.Clear();
        if (result.Drafting is Drafting.Made made)
        {
            result = result with { Drafting = made with { Arrangement = revoicing.Told(made.Arrangement) } };
        }

        return DraftRun.Tell(result, asked, taken, arrangement => Beside(revoicing.Beside(arrangement, taken.Tower.Value, taken.Sound.Value, result.Wish)), output, error, cancel);
    }

    private static PassageRevoicing? Parted(Passage passage, DraftRequest asked, TextWriter error)
    {
        if (!passage.Voices.Any(v => v.HasNotes))
        {
            error.Say($"{asked.Sheet}: there are no notes in it, so there is nothing to voice anew; expected music that is written out (a lead sheet is voiced with 'revoicer draft')");
            return null;
        }

        var revoicing = PassageRevoicing.Of(passage, asked.Choice.Voice);
        if (revoicing is null)
        {
            error.Say($"{asked.Sheet}: {PassageOptions.NoVoice(passage, asked.Choice.Voice)}");
            return null;
        }

        if (revoicing.IsBareTune)
        {
            error.Say($"{asked.Sheet}: it is a tune alone, without chord symbols and without other notes to find chords from; expected music in several voices, or chord symbols over the tune ('revoicer draft' voices that)");
            return null;
        }

        return revoicing;
    }

    private static (string Text, string Summary) Beside(Revoiced revoiced)
    {
        var (before, now) = (revoiced.Before.Totals, revoiced.Now.Totals);
        var summary = string.Create(
            CultureInfo.InvariantCulture,
            $"moved: {revoiced.Moved.Count} of {revoiced.After.Choices.Count} chords; median clash {before.MedianClash:0} before, {now.MedianClash:0} now ({before.MedianWithTune:0} and {now.MedianWithTune:0} with the tune's own)\n")
            + Voices(revoiced.Voices)
            + (revoiced.Before.IsPlayable ? "" : $"before, {Places(revoiced.Before)} could not be played\n")
            + (revoiced.Now.IsPlayable ? "" : $"now, {Places(revoiced.Now)} cannot be played, of the tune itself\n");
        return (RevoicedText.Of(revoiced) + "\n", summary);

        static string Voices(KeptVoices voices) => string.Create(
            CultureInfo.InvariantCulture,
            $"of {voices.LongChords} chords of 0.8 s and more {voices.Basses} have a bass; of {voices.InnerAsked} that had three voices or more {voices.InnerTones} have a tone between bass and tune\n")
            + (voices.Silent == 0 ? "" : $"chords under which nothing is struck any more: {voices.Silent}, as no limb is free there or every bell would clash too badly\n");

        static string Places(AuditReport report) => report.Unplayable.Count == 1 ? "one place" : $"{report.Unplayable.Count} places";
    }
}
