using System.Globalization;
using System.Text;
using Revoicer.Cli.Files;
using Revoicer.Cli.Streams;
using Revoicer.Comparisons;
using Revoicer.Music;
using Revoicer.Values;
using Revoicer.Writing.Json;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Comparisons;

/// <summary>Compares every sheet of a folder under the same settings; one that fails stops no other.</summary>
internal static class CompareFolder
{
    // Each sheet's drafts are made side by side as well.
    private const int AtOnce = 2;

    /// <summary>Reads, drafts, prints; the worst exit code of all.</summary>
    public static int Of(CompareRequest request, OpenedSettings settings, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (Obstacle(request) is { } option)
        {
            error.Say($"revoicer: {option} is for one sheet, and {request.Sheet} is a folder; leave it out, or compare a sheet by itself");
            return ExitCode.WrongUsage;
        }

        if (SheetFolder.List(request.Sheet, error) is not { } sheets)
        {
            return ExitCode.WrongUsage;
        }

        using var progress = new ProgressLine(error);
        var count = new CountLine(progress, sheets.Count, "sheets");
        var results = new (Comparison? Comparison, int ExitCode, string Error)[sheets.Count];
        var done = 0;
        Parallel.For(0, sheets.Count, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = AtOnce }, i =>
        {
            results[i] = Compare(request with { Sheet = sheets[i] }, settings, cancel);
            count.Report(Interlocked.Increment(ref done));
        });
        progress.Clear();
        error.Write(string.Concat(results.Select(r => r.Error)));
        return Report(request, [.. sheets.Zip(results, (sheet, r) => (Path.GetFileName(sheet), r.Comparison, r.ExitCode))], output);
    }

    private static string? Obstacle(CompareRequest request) => request switch
    {
        { Wishes: not null } => "--wishes",
        { Choice.Piece: not null } => "--piece",
        { Chords: true } => "--chords",
        { Bar: not null } => "--bar",
        { Plain: true } => "--plain",
        { TradeOff: true } => "--trade-off",
        { Pictures: true } => "--pictures",
        _ => null,
    };

    private static (Comparison? Comparison, int ExitCode, string Error) Compare(CompareRequest request, OpenedSettings settings, CancellationToken cancel)
    {
        using var error = new StringWriter { NewLine = "\n" };
        if (SheetFolder.Read(request.Sheet, request.Choice, error) is not { } sheet || !CompareRun.CanCompare(request, settings, sheet, error))
        {
            return (null, ExitCode.WrongUsage, error.ToString());
        }

        var tempo = request.PerMinute is { } perMinute ? new Tempo(sheet.Bars[0].Meter.Beat, perMinute) : (Tempo?)null;
        var comparison = Comparing.Of(sheet, settings.Choices, new DraftWish(tempo) { Octave = request.Octave }, TimeProvider.System, null, cancel);
        if (comparison.Settings.Any(s => s.Made is not null))
        {
            return (comparison, ExitCode.Done, error.ToString());
        }

        error.Say(comparison.Settings.SelectMany(s => s.Obstacles).Distinct().Select(sentence => $"{request.Sheet}: {sentence}"));
        return (comparison, ExitCode.NotPlayable, error.ToString());
    }

    private static int Report(CompareRequest request, (string Name, Comparison? Comparison, int ExitCode)[] results, TextWriter output)
    {
        var compared = results.Select(r => new SheetComparison(r.Name, r.Comparison)).ToItems();
        if (request.AsJson)
        {
            output.Write(Encoding.UTF8.GetString(SheetsComparedJson.Write(compared)));
            return results.Max(r => r.ExitCode);
        }

        output.Write(compared.Any(s => s.Comparison is not null) ? SheetsComparedText.Of(compared) : "");
        string[] failed = [.. results.Where(r => r.ExitCode != ExitCode.Done).Select(r => r.Name)];
        output.Say(string.Create(CultureInfo.InvariantCulture, $"{(results.Length == 1 ? "one sheet" : $"{results.Length} sheets")}: {results.Length - failed.Length} compared, {failed.Length} failed"));
        output.Say(failed.Length == 0 ? null : $"failed: {string.Join(", ", failed)}; why is told above");
        output.Say(request.Keys.From < request.Keys.To ? "the keys are those recommended; nothing is moved unless you say so" : null);
        return results.Max(r => r.ExitCode);
    }
}
