using System.Diagnostics;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Sounds;

namespace Revoicer.Benchmarks;

/// <summary>
/// Prints for the sheets joined to ever longer pieces what the draft and its stages take, and the gap.
/// </summary>
internal static class LongReport
{
    public static int Print(IReadOnlyList<string> files)
    {
        var sheets = files.Select(SheetFiles.Read).ToArray();
        if (sheets.Any(s => s is null))
        {
            return 2;
        }

        Console.WriteLine("| bars written | chords heard | whole draft | of it prices | of it search | gap | working set |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        foreach (var bars in new[] { 64, 128, 256, 512, 720, 1024 })
        {
            Row(JoinedSheet.Of(sheets!, bars));
        }

        return 0;
    }

    private static void Row(LeadSheet sheet)
    {
        var times = new StageTimes();
        var watch = Stopwatch.StartNew();
        var drafting = Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, DraftWish.None, times, CancellationToken.None);
        times.Stop();
        if (drafting is not Drafting.Made { Arrangement: var made })
        {
            Console.WriteLine($"| {sheet.Bars.Count} | not playable: {string.Join("; ", drafting.Why)} |");
            return;
        }

        var gap = made.Status.Bound is { } bound ? 100.0 * (made.Status.Price - bound) / bound : double.NaN;
        Console.WriteLine(FormattableString.Invariant(
            $"| {sheet.Bars.Count} | {made.Choices.Count} | {watch.Elapsed.TotalSeconds:0.0} s | {times.Of(Stage.Prices) / 1000:0.0} s | {times.Of(Stage.Search) / 1000:0.0} s | {gap:0.0} % | {Process.GetCurrentProcess().PeakWorkingSet64 / 1e9:0.0} GB |"));
    }
}
