using System.Globalization;
using System.Text;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Options;
using Revoicer.Cli.Settings;
using Revoicer.Cli.Streams;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Solving;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Voicings;
using Revoicer.Writing.Json;
using Revoicer.Writing.Midi;
using Revoicer.Writing.MusicXml;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Drafts;

/// <summary>Carries out a draft command.</summary>
internal static class DraftRun
{
    /// <summary>Reads, voices, writes; the exit code.</summary>
    public static int Of(DraftRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (Directory.Exists(request.Sheet))
        {
            return RecitalRun.Of(request, output, error, cancel);
        }

        using var deadline = request.Deadline();
        var read = SheetFile.Read(request.Sheet, request.Choice, error);
        var taken = DraftSettings.Open(request, error);
        if (read is null || taken is null || Prepared(read, request, error) is not { } sheet)
        {
            return ExitCode.WrongUsage;
        }

        if (!CanWrite(request, taken, error))
        {
            return ExitCode.NotWritten;
        }

        using var progress = new ProgressLine(error);
        var result = SheetDraft.Of(sheet, request, taken, more: null, deadline, progress, cancel);
        progress.Clear();
        return Tell(result, request, taken, before: null, output, error, cancel);
    }

    /// <summary>The sheet as it is to be drafted, in the key asked for; null, with a sentence told, where that cannot be.</summary>
    public static LeadSheet? Prepared(LeadSheet read, DraftRequest request, TextWriter error)
    {
        var (sheet, sentence) = request.Key is { } wish ? wish.Apply(read) : (read, "");
        if (sheet is not null && AskedOfTune.Obstacle(sheet, [request.Layout], request.Octave) is { } obstacle)
        {
            (sheet, sentence) = (null, obstacle);
        }

        if (sheet is null)
        {
            error.Say($"{request.Sheet}: {sentence}");
        }

        return sheet;
    }

    /// <summary>Whether the files of a draft can go where they are to, as far as can be seen before the work; where they cannot, why is told.</summary>
    public static bool CanWrite(DraftRequest request, DraftSettings taken, TextWriter error)
    {
        var name = OutputName.Of(request.Out, request.Sheet);
        var obstacles = OutputFiles.Obstacles([.. OutputName.Endings.Select(ending => name + ending)], request.Force, Inputs(request, taken));
        Tell(obstacles, error);
        return obstacles.Count == 0;
    }

    /// <summary>Writes a draft, or tells why there is none; the exit code.</summary>
    /// <param name="result">What came of it.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="taken">What it was made with.</param>
    /// <param name="before">What stands before the reasons, and in a line of the summary; null for nothing.</param>
    /// <param name="output">For what was made.</param>
    /// <param name="error">For what went wrong.</param>
    /// <param name="cancel">Once it is cancelled nothing is written.</param>
    public static int Tell(
        SheetDraft result, DraftRequest request, DraftSettings taken, Func<Arrangement, (string Text, string Summary)>? before, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        switch (result.Drafting)
        {
            case Drafting.Made made:
                return Write(made.Arrangement, request, taken, result, before?.Invoke(made.Arrangement) ?? ("", ""), output, error, cancel);
            case Drafting.Unplayable or Drafting.NoChords or Drafting.Ruled:
                error.Say(Counted.Of(result.Drafting.Why).Select(reason => $"{request.Sheet}: {reason}"));
                return ExitCode.NotPlayable;
            case Drafting.OutOfTime late:
                error.Say($"{request.Sheet}: {late.Sentence}");
                return ExitCode.NotPlayable;
            case Drafting.Unmet unmet:
                error.Write(string.Concat(Counted.Of(unmet.Problems.Select(p => p.ToString()))));
                return ExitCode.NotPlayable;
            case Drafting.Astray astray:
                error.Write(string.Concat(astray.Problems));
                return ExitCode.WrongUsage;
            case var other:
                throw new InvalidOperationException($"no such drafting: {other}");
        }
    }

    private static int Write(
        Arrangement arrangement, DraftRequest request, DraftSettings taken, SheetDraft result, (string Text, string Summary) before, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var name = OutputName.Of(request.Out, request.Sheet);
        OutputFile[] files =
        [
            new(name + ".mid", MidiWriting.Bytes(arrangement)),
            new(name + ".txt", Encoding.UTF8.GetBytes(before.Text + RationaleText.Of(arrangement))),
            new(name + ".json", ArrangementJson.Write(arrangement)),
            new(name + ".musicxml", MusicXmlWriting.Bytes(arrangement)),
        ];
        if (OutputFiles.Write(files, request.Force, Inputs(request, taken), cancel) is WriteResult.Failed failed)
        {
            Tell(failed.Sentences, error);
            return ExitCode.NotWritten;
        }

        output.Write(Summary(arrangement));
        output.Say(UnheardText.Of(arrangement.Unheard));
        output.Write(before.Summary);
        output.Say(result.BestKey is { } reason ? $"key: {reason}{Heard(arrangement)}" : null);
        output.Say($"tower: {taken.Tower.Source}; sound: {taken.Sound.Source}");
        output.Say(taken.Wishes.Count == 0 ? null : $"wishes kept: {taken.Wishes.Count}, told in {name}.txt");
        var told = arrangement.Totals.LeftOut.Count;
        output.Say(told == 0 ? null : $"does not go as written: {told}, told in {name}.txt");
        output.Say(files.Select(file => $"wrote {file.Name}"));
        return ExitCode.Done;
    }

    private static string[] Inputs(DraftRequest request, DraftSettings taken)
    {
        string?[] inputs = [request.Sheet, request.Wishes, taken.Tower.File, taken.Sound.File];
        return [.. inputs.OfType<string>(), .. request.OtherInputs];
    }

    private static void Tell(IReadOnlyList<string> sentences, TextWriter error) =>
        error.Say(sentences.Select(sentence => $"revoicer: {sentence}"));

    private static string Heard(Arrangement arrangement) =>
        arrangement.SoundingKey is { } sounding && arrangement.WrittenKey is { } written ? $" (you read {written}, it is heard in {sounding})" : "";

    private static string Summary(Arrangement arrangement)
    {
        var totals = arrangement.Totals;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"""
            {VisibleText.OneLine(arrangement.Title)}: {(arrangement.Choices.Count == 1 ? "one chord" : $"{arrangement.Choices.Count} chords")} voiced for {arrangement.Tower.Name}, {arrangement.Sound}
            median clash {totals.MedianClash:0} (100 = C4 E4 G4 struck together{(arrangement.TuneOctaves is null ? "" : $"; {arrangement.MedianWithTune:0} with the tune's own")}), {Bass(arrangement)}
            strokes: {arrangement.Strokes.Count(s => !s.IsTune)}{(arrangement.TuneOctaves is null ? "" : " beside the tune")}; chords without a stroke: {arrangement.SilentChords}, with one alone: {arrangement.SingleStrokes}
            search: {arrangement.Status}

            """) + Octave(arrangement) + Layout(arrangement);
    }

    private static string Octave(Arrangement arrangement) => arrangement.TuneOctaves is not { } octaves ? ""
        : $"tune: {OctaveNames.Of(octaves)}{(arrangement.OtherOctaves.Count == 0 ? "" : ". ")}{OctaveWords.Of(arrangement.OtherOctaves)}\n";

    private static string Bass(Arrangement arrangement) => arrangement.HasTuneBelow
        ? "the tune below is the bass"
        : string.Create(CultureInfo.InvariantCulture, $"root or slash bass lowest in {100 * arrangement.Totals.RootLowest:0} % of the chords");

    // Which of two layouts was taken; nothing where one alone was asked for.
    private static string Layout(Arrangement arrangement) => arrangement.Layout switch
    {
        { Other: { } other } layout => string.Create(
            CultureInfo.InvariantCulture,
            $"layout: the tune {TuneLayoutNames.Of(layout.Tune)}, price {layout.Price / 1000.0:0.0} against {other.Price / 1000.0:0.0}, the tune with itself counted\n"),
        { Obstacle: not null } layout => $"layout: the tune {TuneLayoutNames.Of(layout.Tune)}; with the tune elsewhere there is no draft, the reasons say why\n",
        _ => "",
    };
}
