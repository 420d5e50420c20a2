using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>
/// Shows how good a choice is, and finds the better one if there is any: candidates with which nothing cheaper can be made
/// are taken away by the dual bound; where some stay, one slot is fixed to each of its candidates in turn and the rest bounded
/// again (branch and bound). Where it comes to an end the best choice is optimal.
/// </summary>
internal sealed class Proof
{
    // Sweeps at the root and at each branch; the bound rises quickly at first, and branching closes the rest. Estimates.
    private const int SweepsAtRoot = 60;
    private const int SweepsAtBranch = 8;

    // Another sweep is worth it where the last one took away a candidate or raised the bound by this many thousandths.
    private const long WorthSweeping = 300;

    // Prices of pairs that may be laid out in tables, of four bytes each. An estimate of what a player's machine has.
    private const long MostCells = 100_000_000;

    private readonly IChoicePrices _prices;
    private readonly Counters _counters;
    private readonly long _mostBranches;
    private readonly CancellationToken _cancel;
    private int[] _choice;
    private long _price;
    private long _branches;

    private Proof(IChoicePrices prices, Counters counters, int[] choice, long mostBranches, CancellationToken cancel)
    {
        (_prices, _counters, _mostBranches, _cancel) = (prices, counters, mostBranches, cancel);
        (_choice, _price) = (choice, prices.Whole(choice));
    }

    /// <summary>Improves a choice as far as it can be and bounds it.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="counters">The counting rules, which the choice keeps.</param>
    /// <param name="candidates">For each slot the candidates with which a choice might be cheaper; all others cannot be.</param>
    /// <param name="choice">A choice.</param>
    /// <param name="mostBranches">After so many branches it ends without a proof.</param>
    /// <param name="cancel">Stops the work.</param>
    public static ProvenChoice Of(
        IChoicePrices prices, Counters counters, int[][] candidates, int[] choice, long mostBranches, CancellationToken cancel)
    {
        var proof = new Proof(prices, counters, choice, mostBranches, cancel);
        if (candidates.Any(c => c.Length == 0))
        {
            return proof.Ended(proof._price);
        }

        if (Cells(prices, candidates, onlyNext: true) > MostCells)
        {
            return proof.Ended(0);
        }

        var chain = DualBound.OfChain(prices, counters, candidates);
        if (chain.Below(proof._price) is not { } left)
        {
            return proof.Ended(proof._price);
        }

        if (Cells(prices, left.Candidates, onlyNext: false) > MostCells)
        {
            return proof.Ended(chain.Bound);
        }

        var root = proof.Tightened(left.WithFarPairs(prices), SweepsAtRoot);
        return proof.Ended(root is null || proof.Branch(root) ? long.MaxValue : root.Bound);
    }

    private ProvenChoice Ended(long bound) => new(_choice, _price, Math.Min(bound, _price), _branches);

    private static long Cells(IChoicePrices prices, IReadOnlyList<int[]> candidates, bool onlyNext) => Enumerable.Range(0, candidates.Count)
        .Sum(slot => prices.Linked(slot)
            .Where(other => other == slot + 1 || (other > slot && !onlyNext))
            .Sum(other => (long)candidates[slot].Length * candidates[other].Length));

    // The bound swept until it stands nearly still; null where nothing cheaper is left.
    private DualBound? Tightened(DualBound bound, int mostSweeps)
    {
        for (var sweep = 0; sweep < mostSweeps; sweep++)
        {
            _cancel.ThrowIfCancellationRequested();
            var before = bound.Bound;
            bound.Sweep(_price);
            if (bound.Below(_price) is not { } kept)
            {
                return null;
            }

            var isWorthIt = kept.Size < bound.Size || kept.Bound >= before + WorthSweeping;
            bound = kept;
            if (!isWorthIt)
            {
                break;
            }
        }

        return Tried(bound);
    }

    // Takes what the bound suggests where it is better than the best so far.
    private DualBound? Tried(DualBound bound)
    {
        if (bound.Suggestion() is { } choice && _counters.AreKept(choice) && _prices.Whole(choice) is var price && price < _price)
        {
            (_choice, _price) = (choice, price);
            return bound.Below(price);
        }

        return bound;
    }

    // Whether all that is left was looked at.
    private bool Branch(DualBound bound)
    {
        var slot = Enumerable.Range(0, bound.Candidates.Count).Where(s => bound.Candidates[s].Length > 1)
            .OrderBy(s => bound.Candidates[s].Length)
            .FirstOrDefault(-1);
        if (slot < 0)
        {
            return true;
        }

        foreach (var place in bound.CheapestFirst(slot))
        {
            if (++_branches > _mostBranches)
            {
                return false;
            }

            if (bound.Fixed(slot, place).Below(_price) is { } branch
                && Tightened(branch, SweepsAtBranch) is { } left
                && !Branch(left))
            {
                return false;
            }
        }

        return true;
    }
}

/// <summary>A choice and what is known of it.</summary>
/// <param name="Choice">For each slot the number of a candidate.</param>
/// <param name="Price">Its price.</param>
/// <param name="Bound">No choice that keeps the rules is cheaper; the price itself where the choice is optimal.</param>
/// <param name="Branches">How many branches were looked at.</param>
internal sealed record ProvenChoice(int[] Choice, long Price, long Bound, long Branches);
