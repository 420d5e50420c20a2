using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Cli.Files;
using Revoicer.Cli.Streams;
using Revoicer.Values;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Drafts;

/// <summary>Drafts every sheet of a folder; one that fails stops no other.</summary>
internal static class RecitalRun
{
    // Each takes a core most of the time, and half a gigabyte at worst.
    private const int AtOnce = 2;

    /// <summary>Reads, voices, writes each; the worst exit code of all.</summary>
    public static int Of(DraftRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (Obstacle(request) is { } sentence)
        {
            error.Say($"revoicer: {sentence}");
            return ExitCode.WrongUsage;
        }

        var sheets = SheetFolder.List(request.Sheet, error);
        var taken = DraftSettings.Open(request, error);
        if (sheets is null || taken is null)
        {
            return ExitCode.WrongUsage;
        }

        using var deadline = request.Deadline();
        using var progress = new ProgressLine(error);
        var results = new SheetResult?[sheets.Count];
        var count = new CountLine(progress, sheets.Count, "sheets");
        var done = 0;
        var isInterrupted = false;
        try
        {
            Parallel.For(0, sheets.Count, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = AtOnce }, i =>
            {
                results[i] = Draft(sheets, i, request, taken, deadline, cancel);
                count.Report(Interlocked.Increment(ref done));
            });
        }
        catch (Exception e) when (BrokenOff.Is(e))
        {
            isInterrupted = true;
        }

        progress.Clear();
        return Report([.. results.OfType<SheetResult>()], sheets.Count, isInterrupted, output, error);
    }

    private static string? Obstacle(DraftRequest request) => request switch
    {
        { Wishes: not null } => $"--wishes speaks of the bars of one sheet, and {request.Sheet} is a folder; draft that sheet by itself",
        { Choice.Piece: not null } => $"--piece chooses from one file, and {request.Sheet} is a folder; draft that file by itself",
        { Out: { } folder } when !Directory.Exists(folder) => $"--out: there is no folder {folder} to put the drafts of a folder into; make it, or name another",
        _ => null,
    };

    private static SheetResult Draft(IReadOnlyList<string> sheets, int number, DraftRequest request, DraftSettings taken, Deadline deadline, CancellationToken cancel)
    {
        var sheet = sheets[number];
        var name = NameOf(sheet);
        using var error = new StringWriter { NewLine = "\n" };
        var own = request with { Sheet = sheet, Out = Path.Combine(request.Out ?? "", name), OtherInputs = sheets };
        if (sheets.Take(number).FirstOrDefault(s => RealPath.Comparer.Equals(NameOf(s), name)) is { } before)
        {
            return new SheetResult(sheet, ExitCode.NotWritten, null, $"{sheet}: its draft would have the name of that of {before}; draft it by itself with --out\n");
        }

        if (SheetFolder.Read(sheet, request.Choice, error) is not { } read || DraftRun.Prepared(read, own, error) is not { } prepared)
        {
            return new SheetResult(sheet, ExitCode.WrongUsage, null, error.ToString());
        }

        if (!DraftRun.CanWrite(own, taken, error))
        {
            return new SheetResult(sheet, ExitCode.NotWritten, null, error.ToString());
        }

        using var unseen = new ProgressLine(TextWriter.Null);
        var result = SheetDraft.Of(prepared, own, taken, more: null, deadline, unseen, cancel);
        var exitCode = DraftRun.Tell(result, own, taken, before: null, TextWriter.Null, error, cancel);
        return new SheetResult(sheet, exitCode, exitCode == ExitCode.Done ? (result.Drafting as Drafting.Made)?.Arrangement : null, error.ToString()) { Heading = result.Drafting.InShort, Written = own.Out, Key = result.BestKey };
    }

    private static string NameOf(string sheet) => OutputName.Of(null, sheet);

    private static int Report(SheetResult[] results, int sheets, bool isInterrupted, TextWriter output, TextWriter error)
    {
        foreach (var result in results)
        {
            error.Write(result.Error);
            output.Say($"{Path.GetFileName(result.Sheet)}: {result.InShort}");
        }

        var failed = results.Where(r => r.ExitCode != ExitCode.Done).ToArray();
        output.Say(string.Create(CultureInfo.InvariantCulture, $"{(sheets == 1 ? "one sheet" : $"{sheets} sheets")}: {results.Length - failed.Length} drafted, {failed.Length} failed{(isInterrupted ? $", {sheets - results.Length} not begun or not finished" : "")}"));
        output.Say(failed.Length == 0 ? null : $"failed: {string.Join(", ", failed.Select(f => Path.GetFileName(f.Sheet)))}; why is told above");
        return isInterrupted ? ExitCode.Interrupted : results.Max(r => r.ExitCode);
    }

    /// <summary>What came of one sheet.</summary>
    /// <param name="Sheet">Its file.</param>
    /// <param name="ExitCode">How its draft ended.</param>
    /// <param name="Draft">The draft; null where there is none.</param>
    /// <param name="Error">Problems and warnings.</param>
    private sealed record SheetResult(string Sheet, int ExitCode, Arrangement? Draft, string Error)
    {
        public string Heading { get; init; } = "";

        public string? Written { get; init; }

        public string? Key { get; init; }

        /// <summary>One line.</summary>
        public string InShort => Draft is { } draft
            ? string.Create(CultureInfo.InvariantCulture, $"{draft.Title}, {draft.Choices.Count} chords ({draft.SilentChords} silent, {draft.SingleStrokes} of one stroke), median clash {draft.Totals.MedianClash:0}, {draft.Status}; wrote {Written}.mid, .txt, .json and .musicxml{(Key is null ? "" : $"; {Key}")}{(UnheardText.Of(draft.Unheard) is { } unheard ? $"; {unheard}" : "")}")
            : ExitCode switch
            {
                Cli.ExitCode.NotPlayable => Heading,
                Cli.ExitCode.NotWritten => "could not be written",
                _ => "cannot be read, or not as asked for",
            };
    }
}
