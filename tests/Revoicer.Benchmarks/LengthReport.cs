using System.Diagnostics;
using Revoicer.Bells;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;

namespace Revoicer.Benchmarks;

/// <summary>
/// Prints what the two halves of the search take over ever more slots of the sheets joined: finding a good choice (rounds),
/// and showing how good it is (bound).
/// </summary>
internal static class LengthReport
{
    private static readonly int[] Lengths = [32, 64, 128, 256, 512, 1024];

    public static int Print(IReadOnlyList<string> files)
    {
        var sheets = files.Select(SheetFiles.Read).ToArray();
        if (sheets.Any(s => s is null))
        {
            return 2;
        }

        // A bar has about one slot.
        var sound = ShippedSounds.Default;
        var (plan, candidates) = ListedSheet.Of(JoinedSheet.Of(sheets!, Lengths[^1] * 5 / 4));
        var prices = SheetPrices.Of(new Instrument(ShippedTowers.Default, sound), sound, plan, candidates, CancellationToken.None);
        var book = RuleBook.For(SoundRules.Of(sound), prices);

        Console.WriteLine("| slots | rounds | bound | rounds a slot, times the first | bound a slot, times the first | gap |");
        Console.WriteLine("|---|---|---|---|---|---|");
        (double Rounds, double Bound)? first = null;
        foreach (var slots in Lengths.Where(n => n <= prices.Count))
        {
            var (found, rounds) = Timed(prices, book, slots, ProofEffort.Quick with { MostCells = 0 });
            var (proven, all) = Timed(prices, book, slots, ProofEffort.Quick);
            var (perRounds, perBound) = (rounds / slots, (all - rounds) / slots);
            first ??= (perRounds, perBound);
            Console.WriteLine(FormattableString.Invariant(
                $"| {slots} | {rounds:0.00} s | {all - rounds:0.00} s | {perRounds / first.Value.Rounds:0.00} | {perBound / first.Value.Bound:0.00} | {100.0 * (found.Price - found.Bound) / found.Bound:0.0} % before, {100.0 * (proven.Price - proven.Bound) / proven.Bound:0.0} % after |"));
        }

        return 0;
    }

    // The shortest is run once before, so that what runs is compiled.
    private static ((long Price, long Bound) Found, double Seconds) Timed(SheetPrices prices, RuleBook book, int slots, ProofEffort effort)
    {
        var (window, counters) = (new PriceWindow(prices, 0, slots), book.Counters.Window(0, slots));
        for (var warm = slots == Lengths[0] ? 1 : 0; ; warm--)
        {
            var watch = Stopwatch.StartNew();
            var (_, price, bound, _) = Search.Run(window, book.Allowed[..slots], counters, effort, CancellationToken.None)!.Value;
            if (warm == 0)
            {
                return ((price, bound), watch.Elapsed.TotalSeconds);
            }
        }
    }
}
