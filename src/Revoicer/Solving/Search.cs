using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Solving.Windows;
using Revoicer.Values;

namespace Revoicer.Solving;

/// <summary>Finds the cheapest voicings of a sheet that keep the rules, and a bound below which none can lie.</summary>
public static class Search
{
    // The chain chooses from this many candidates a slot, those with the lowest bound; the last changes of single slots
    // are made among all. The bound itself is taken over all candidates.
    private const int Promising = 250;

    // Of these many the cheapest that a counting rule does not count are kept besides, so that every rule can be met.
    private const int Uncounted = 20;

    /// <summary>Searches.</summary>
    /// <param name="prices">The priced slots.</param>
    /// <param name="rules">What every arrangement keeps.</param>
    /// <param name="effort">What may be spent on showing how good the answer is.</param>
    /// <param name="cancel">Stops the search.</param>
    /// <exception cref="OperationCanceledException">It was stopped, or the deadline came before there was an answer.</exception>
    public static Outcome Run(SheetPrices prices, IReadOnlyList<Rule> rules, ProofEffort effort, CancellationToken cancel)
    {
        using var stop = effort.Deadline.With(cancel);
        var book = RuleBook.For(rules, prices);
        if (Playable(prices, book, effort, stop.Token) is not { } found)
        {
            return Explanation.Of(prices, rules, stop.Token);
        }

        var hindsight = new Hindsight(prices, rules, book, found.Choice);
        var slots = prices.Plan.Slots.AsParallel().AsOrdered().WithCancellation(cancel)
            .Select(slot => effort.Deadline.HasPassed ? SlotOutcome.Unknown : hindsight.Of(slot));
        return new Outcome.Found(found.Choice.ToItems(), found.Price, found.Bound, found.Starts, slots.ToItems(), book.Lifted.ToItems());
    }

    /// <summary>
    /// A choice that keeps every rule and can be played; null where there is none. Where the rounds end at nothing, or at moves
    /// that cannot be made, another search says whether there is anything at all.
    /// </summary>
    internal static BoundedChoice? Playable(
        SheetPrices prices, RuleBook book, ProofEffort effort, CancellationToken cancel)
    {
        if (book.Allowed.Any(slot => slot.Length == 0))
        {
            return null;
        }

        var answer = SeldomRules.Run(prices, book.Allowed, book.Counters, book.Leasts, effort, cancel);
        if (answer is { } found && prices.CanBeMoved(found.Choice))
        {
            return found;
        }

        if (AnyChoice.Of(prices, book.Allowed, book.Counters, book.Leasts, withMoves: true, cancel).Choice is not { } any)
        {
            return null;
        }

        var polished = Steering.Polished(prices, book.Allowed, book.Counters, book.Leasts, any, cancel);
        var bound = answer?.Bound ?? NeighbourBound.Of(prices, book.Allowed, cancel).Bound;
        return new BoundedChoice(polished, prices.Whole(polished), bound, (answer?.Starts ?? 0) + 1);
    }

    /// <summary>The same over plain prices; null where the counting rules cannot be kept.</summary>
    internal static BoundedChoice? Run(
        IChoicePrices prices, int[][] allowed, Counters counters, ProofEffort effort, CancellationToken cancel) =>
        prices.Count > SlotWindows.LongestWhole
            ? InWindows(prices, allowed, counters, effort, cancel)
            : Whole(prices, allowed, counters, effort, cancel);

    // A long piece in windows of whole phrases, each solved by itself. What two windows cost together is not negative, so the
    // bounds add up to one of the whole; the answers together are a start that is then changed for the better slot by slot.
    private static BoundedChoice? InWindows(
        IChoicePrices prices, int[][] allowed, Counters counters, ProofEffort effort, CancellationToken cancel)
    {
        var parts = SlotWindows.Of(prices.Count, counters.StartsPhrase).AsParallel().AsOrdered().WithCancellation(cancel)
            .Select(w => Whole(new PriceWindow(prices, w.From, w.Count), allowed[w.From..(w.From + w.Count)], counters.Window(w.From, w.Count), effort, cancel))
            .ToArray();
        if (parts.Any(part => part is null))
        {
            return null;
        }

        var bound = parts.Sum(part => part!.Value.Bound);
        var start = parts.SelectMany(part => part!.Value.Choice);
        var rounds = new Rounds(prices, counters, allowed, [.. start.Select(c => new[] { c })], effort.Deadline, cancel);
        var (choice, price) = rounds.From(null, cancel)!.Value;
        return new BoundedChoice(choice, price, Math.Min(bound, price), 1);
    }

    private static BoundedChoice? Whole(
        IChoicePrices prices, int[][] allowed, Counters counters, ProofEffort effort, CancellationToken cancel)
    {
        var bound = NeighbourBound.Of(prices, allowed, cancel);
        var promising = allowed.Select((candidates, slot) => MostPromising(bound, counters, slot, candidates)).ToArray();

        // Where the rules cannot be kept among these, all are chosen from before anything is called impossible.
        return Answer(prices, allowed, promising, counters, bound, effort, cancel) ?? Answer(prices, allowed, allowed, counters, bound, effort, cancel);
    }

    private static BoundedChoice? Answer(
        IChoicePrices prices, int[][] allowed, int[][] promising, Counters counters, NeighbourBound bound, ProofEffort effort, CancellationToken cancel)
    {
        var rounds = new Rounds(prices, counters, allowed, promising, effort.Deadline, cancel);
        var cheapestAlone = promising.Select((candidates, slot) => candidates.MinBy(c => bound.Least(slot, c))).ToArray();
        int[]?[] starts = [null, cheapestAlone];
        (int[] Choice, long Price)? best = null;
        foreach (var start in starts)
        {
            if (best is not null && effort.Deadline.HasPassed)
            {
                break;
            }

            try
            {
                best = rounds.From(start, cancel) is { } answer && (best is null || answer.Price < best.Value.Price) ? answer : best;
            }
            catch (Exception e) when (BrokenOff.Is(e) && best is not null && effort.Deadline.HasPassed)
            {
            }
        }

        return best is { } found ? Proven(prices, allowed, counters, bound, found.Choice, starts.Length, effort, cancel) : null;
    }

    private static BoundedChoice Proven(
        IChoicePrices prices, int[][] allowed, Counters counters, NeighbourBound bound, int[] choice, int starts, ProofEffort effort, CancellationToken cancel)
    {
        var proof = Proof.Of(prices, counters, bound, allowed, choice, effort, cancel);
        return new BoundedChoice(proof.Choice, proof.Price, Math.Min(proof.Price, Math.Max(bound.Bound, proof.Bound)), starts);
    }

    private static int[] MostPromising(NeighbourBound bound, Counters counters, int slot, int[] candidates)
    {
        var least = new long[candidates.Max() + 1];
        foreach (var candidate in candidates)
        {
            least[candidate] = bound.Least(slot, candidate);
        }

        var sorted = CheapestFirst.Sort(least, candidates);
        return [.. sorted.Take(Promising)
            .Concat(sorted.Where(c => counters.All.All(r => r.Counts[slot][c] == 0)).Take(Uncounted))
            .Distinct()
            .Order()];
    }
}
