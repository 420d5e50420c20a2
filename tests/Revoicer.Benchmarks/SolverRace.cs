using System.Diagnostics;
using Revoicer.Bells;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;

namespace Revoicer.Benchmarks;

/// <summary>
/// Slots of joined sheets with the cheapest candidates of each and the rules that count, solved by the constraint solver in
/// three settings and by the project's own ways: with prices of neighbours alone, and with all pairs.
/// </summary>
internal static class SolverRace
{
    private const int Slots = 64;
    private const int Candidates = 60;
    private const double Longest = 20;

    private static readonly (string Words, string Settings)[] Solvers =
    [
        ("one worker, linear relaxation, no presolve", ConstraintModel.BestSettings),
        ("one worker, linear relaxation", "num_workers:1,random_seed:1,linearization_level:2"),
        ("one worker, as it comes", "num_workers:1,random_seed:1"),
    ];

    public static int Print(IReadOnlyList<string> files)
    {
        var sheets = files.Select(SheetFiles.Read).ToArray();
        if (sheets.Any(s => s is null))
        {
            return 2;
        }

        var sound = ShippedSounds.Default;
        var (plan, candidates) = ListedSheet.Of(JoinedSheet.Of(sheets!, Slots));
        var prices = SheetPrices.Of(new Instrument(ShippedTowers.Default, sound), sound, plan, candidates, CancellationToken.None);
        var book = RuleBook.For(SoundRules.Of(sound), prices);
        var whole = new PriceWindow(prices, 0, Slots);
        var counters = book.Counters.Window(0, Slots);
        var bound = NeighbourBound.Of(whole, book.Allowed[..Slots]);
        int[][] cheapest = [.. book.Allowed[..Slots].Select((list, slot) => list.OrderBy(c => bound.Least(slot, c)).Take(Candidates).Order().ToArray())];

        Console.WriteLine($"| {Slots} slots of {Candidates} candidates | time | price |");
        Console.WriteLine("|---|---|---|");
        var neighbours = new NeighboursOnly(whole);
        foreach (var (words, settings) in Solvers)
        {
            Time($"constraint solver, neighbours alone: {words}", () => Words(ConstraintModel.Cheapest(neighbours, counters, cheapest, Longest, CancellationToken.None, settings)));
        }

        Time("dynamic programme with counts, neighbours alone", () => Words((true, new Chain(neighbours, counters, cheapest).Cheapest(null), 0), neighbours));
        Time("the search, all pairs", () =>
        {
            var found = Search.Run(whole, cheapest, counters, ProofEffort.Quick, CancellationToken.None)!.Value;
            return FormattableString.Invariant($"{found.Price}, bound {found.Bound}");
        });
        return 0;
    }

    // The first run compiles; the second is told where the first was quick.
    private static void Time(string what, Func<string> run)
    {
        var watch = Stopwatch.StartNew();
        var words = run();
        if (watch.Elapsed.TotalSeconds < 2)
        {
            watch.Restart();
            words = run();
        }

        Console.WriteLine(FormattableString.Invariant($"| {what} | {watch.Elapsed.TotalMilliseconds:0} ms | {words} |"));
    }

    private static string Words((bool Ended, int[]? Choice, long Price) found, IChoicePrices? prices = null) => found switch
    {
        (false, _, _) => "came to no end",
        (_, { } choice, var price) => FormattableString.Invariant($"{(prices is null ? price : prices.Whole(choice))}"),
        _ => "no choice keeps the counts",
    };

    private sealed class NeighboursOnly(IChoicePrices all) : IChoicePrices
    {
        public int Count => all.Count;

        public ReadOnlySpan<long> Alone(int slot) => all.Alone(slot);

        public IReadOnlyList<int> Linked(int slot) => [.. all.Linked(slot).Where(o => Math.Abs(o - slot) == 1)];

        public void PairPrices(int slot, int candidate, int other, ReadOnlySpan<int> candidates, Span<long> prices) =>
            all.PairPrices(slot, candidate, other, candidates, prices);
    }
}
