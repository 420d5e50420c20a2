using Revoicer.Prices;
using Revoicer.Values;

namespace Revoicer.Solving;

/// <summary>
/// The search under rules that ask for a least, as other bells in at least so many chords. A count over a whole piece is
/// too much for the chain's state; so a slot that does not count is given a surcharge (a Lagrange multiplier), raised until
/// the rule is kept and then brought down as far as it stays kept. An answer that still wants for it is changed where that
/// costs least; and what comes out is changed slot by slot for the better under the true prices. A bound under surcharges, less what they can add to a choice that keeps the rules, is a bound.
/// </summary>
internal static class Steering
{
    // The first surcharge is a clash unit; after so many doublings it is more than any chord costs.
    private const long FirstSurcharge = 1000;
    private const int MostRaised = 16;

    // So often the least surcharge that does is halved in on.
    private const int Halvings = 3;

    /// <summary>The answer, its price, a bound and the starts; null where none was found that keeps all rules.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="allowed">For each slot the candidates that the rules on it allow; at least one.</param>
    /// <param name="counters">The rules that set a most.</param>
    /// <param name="leasts">The rules that ask for a least.</param>
    /// <param name="effort">What may be spent on showing how good the answer is.</param>
    /// <param name="cancel">Stops the search.</param>
    public static BoundedChoice? Run(
        IChoicePrices prices, int[][] allowed, Counters counters, IReadOnlyList<Least> leasts, ProofEffort effort, CancellationToken cancel)
    {
        if (leasts.Count == 0)
        {
            return Search.Run(prices, allowed, counters, effort, cancel);
        }

        var search = new Steered(prices, allowed, counters, leasts, effort.Deadline, cancel);
        try
        {
            Steer(search, leasts.Count, effort);
        }
        catch (Exception e) when (BrokenOff.Is(e) && search.Best is not null && effort.Deadline.HasPassed)
        {
        }

        return search.Best is { } best ? new BoundedChoice(best, prices.Whole(best), Math.Min(prices.Whole(best), search.Bound), search.Starts) : null;
    }

    private static void Steer(Steered search, int rules, ProofEffort effort)
    {
        var (low, high) = (new long[rules], new long[rules]);
        for (var raised = 0; raised < MostRaised && !search.Try(high, ProofEffort.Unproven) && search.Wanting.Contains(true); raised++)
        {
            low = [.. high];
            high = [.. high.Select((surcharge, rule) => search.Wanting[rule] ? Math.Max(FirstSurcharge, 2 * surcharge) : surcharge)];
        }

        for (var halved = 0; halved < Halvings && search.Best is not null && !low.SequenceEqual(high); halved++)
        {
            long[] middle = [.. low.Zip(high, (a, b) => (a + b) / 2)];
            (low, high) = search.Try(middle, ProofEffort.Unproven) ? (low, middle) : (middle, high);
        }

        // Now the bound is worth some work, and what comes out is at the least as good.
        search.Try(high, effort);
    }

    /// <summary>A choice that keeps all rules, changed slot by slot as long as that makes it cheaper and keeps them.</summary>
    public static int[] Polished(
        IChoicePrices prices, int[][] allowed, Counters counters, IReadOnlyList<Least> leasts, int[] start, CancellationToken cancel)
    {
        int[] choice = [.. start];
        bool improved;
        do
        {
            improved = false;
            for (var slot = 0; slot < choice.Length; slot++)
            {
                cancel.ThrowIfCancellationRequested();
                var costs = prices.InPlace(choice, slot, allowed[slot]);
                var now = costs[Array.IndexOf(allowed[slot], choice[slot])];
                var better = CheapestFirst.Sort(costs, Enumerable.Range(0, costs.Length).Where(i => costs[i] < now))
                    .Select(i => allowed[slot][i])
                    .Where(c => counters.AllowsChange(choice, slot, c) && leasts.All(l => l.AllowsChange(choice, slot, c)))
                    .Take(1)
                    .ToArray();
                improved |= better.Length > 0;
                choice[slot] = better.Length > 0 ? better[0] : choice[slot];
            }
        }
        while (improved);
        return choice;
    }

    private sealed class Steered(IChoicePrices prices, int[][] allowed, Counters counters, IReadOnlyList<Least> leasts, Deadline deadline, CancellationToken cancel)
    {
        public int[]? Best { get; private set; }

        public long Bound { get; private set; } = long.MinValue;

        public int Starts { get; private set; }

        /// <summary>Which rules the last answer did not keep.</summary>
        public bool[] Wanting { get; private set; } = [];

        public bool Try(long[] surcharges, ProofEffort effort)
        {
            if (Search.Run(new SteeredPrices(prices, leasts, surcharges), allowed, counters, effort with { Deadline = deadline }, cancel) is not { } answer)
            {
                return false;
            }

            // A choice that keeps a rule has at most the slots of the stretch less the least without what counts.
            var most = leasts.Select((l, rule) => surcharges[rule] * (l.InStretch.Count(s => s) - l.AtLeast)).Sum();
            Bound = Math.Max(Bound, answer.Bound - most);
            Starts += answer.Starts;
            Wanting = [.. leasts.Select(l => !l.IsKept(answer.Choice))];
            if ((Wanting.Contains(true) ? Completed(answer.Choice) : answer.Choice) is { } kept)
            {
                var polished = Polished(prices, allowed, counters, leasts, kept, cancel);
                Best = Best is null || prices.Whole(polished) < prices.Whole(Best) ? polished : Best;
            }

            return !Wanting.Contains(true);
        }

        // An answer that wants for some rules, changed in the slots where that costs least until all are kept; null where no
        // change of a single slot helps any more.
        private int[]? Completed(int[] answer)
        {
            int[] choice = [.. answer];
            while (leasts.Any(l => !l.IsKept(choice)))
            {
                cancel.ThrowIfCancellationRequested();
                var changes = Enumerable.Range(0, choice.Length).Select(slot => CheapestHelp(choice, slot)).OfType<Change>().ToArray();
                if (changes.Length == 0)
                {
                    return null;
                }

                var cheapest = changes.MinBy(c => c.CostsMore)!;
                choice[cheapest.Slot] = cheapest.Candidate;
            }

            return choice;
        }

        private Change? CheapestHelp(int[] choice, int slot)
        {
            int[] helping = [.. allowed[slot].Where(c => Helps(choice, slot, c) && counters.AllowsChange(choice, slot, c))];
            if (helping.Length == 0)
            {
                return null;
            }

            var costs = prices.InPlace(choice, slot, [choice[slot], .. helping]);
            var best = Enumerable.Range(0, helping.Length).MinBy(i => costs[i + 1]);
            return new Change(slot, helping[best], costs[best + 1] - costs[0]);
        }

        // It adds to a rule that wants, and takes from none what it needs.
        private bool Helps(int[] choice, int slot, int candidate) =>
            leasts.Any(l => !l.IsKept(choice) && l.Counts[slot][candidate] && !l.Counts[slot][choice[slot]])
            && leasts.All(l => l.AllowsChange(choice, slot, candidate));

        private sealed record Change(int Slot, int Candidate, long CostsMore);
    }
}
