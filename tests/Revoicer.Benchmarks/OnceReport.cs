using System.Diagnostics;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Sounds;

namespace Revoicer.Benchmarks;

/// <summary>Drafts each sheet once, cold, and prints what its stages take, price and gap, and the memory it needed.</summary>
internal static class OnceReport
{
    public static int Print(IEnumerable<string> files)
    {
        foreach (var file in files)
        {
            if (SheetFiles.Read(file) is not { } sheet)
            {
                return 2;
            }

            var times = new StageTimes();
            var watch = Stopwatch.StartNew();
            var drafting = Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, DraftWish.None, times, CancellationToken.None);
            times.Stop();
            var stages = Enum.GetValues<Stage>().Select(s => FormattableString.Invariant($"{s} {times.Of(s) / 1000:0.0} s"));
            var status = drafting is Drafting.Made made ? $"price {made.Arrangement.Status.Price}, {made.Arrangement.Status}" : "not playable";
            using var process = Process.GetCurrentProcess();
            Console.WriteLine(FormattableString.Invariant(
                $"{file}: {watch.Elapsed.TotalSeconds:0.0} s ({string.Join(", ", stages)}); user {process.UserProcessorTime.TotalSeconds:0.0} s; {process.PeakWorkingSet64 / 1e9:0.00} GB; {status}"));
        }

        return 0;
    }
}
