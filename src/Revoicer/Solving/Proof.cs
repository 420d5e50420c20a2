using Revoicer.Prices;
using Revoicer.Values;

namespace Revoicer.Solving;

/// <summary>
/// Shows how good a choice is, and finds the better one if there is any: candidates with which nothing cheaper can be made
/// are taken away by the dual bound; where some stay, one slot is fixed to each of its candidates in turn and the rest bounded
/// again (branch and bound). Where it comes to an end the best choice is optimal.
/// </summary>
internal sealed class Proof
{
    // Pairs of slots are looked at in these steps of distance: the near ones price most, and what they take away need not be
    // laid out for the far ones.
    private static readonly int[] Reaches = [1, 3, 6, int.MaxValue];

    // Sweeps after each step and at each branch; the bound rises quickly at first, and branching closes the rest. Estimates.
    private const int SweepsAtStep = 4;
    private const int SweepsAtRoot = 60;
    private const int SweepsAtBranch = 8;

    // Another sweep is worth it where the last one took away a candidate or raised the bound by this many thousandths.
    private const long WorthSweeping = 300;

    // The constraint solver is not asked where more arcs than this are left; it would not end. Estimate.
    private const long MostArcs = 1_000_000;

    private readonly IChoicePrices _prices;
    private readonly Counters _counters;
    private readonly ProofEffort _effort;
    private readonly CancellationToken _cancel;
    private int[] _choice;
    private long _price;
    private long _branches;

    // What is shown so far whatever comes of the rest.
    private long _shown;

    private Proof(IChoicePrices prices, Counters counters, int[] choice, ProofEffort effort, CancellationToken cancel)
    {
        (_prices, _counters, _effort, _cancel) = (prices, counters, effort, cancel);
        (_choice, _price) = (choice, prices.Whole(choice));
    }

    /// <summary>Improves a choice as far as it can be and bounds it.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="counters">The counting rules, which the choice keeps.</param>
    /// <param name="bound">What each candidate costs at the least.</param>
    /// <param name="allowed">For each slot the candidates that the rules on it allow.</param>
    /// <param name="choice">A choice of them.</param>
    /// <param name="effort">What it may spend.</param>
    /// <param name="cancel">Stops the work.</param>
    public static ProvenChoice Of(
        IChoicePrices prices, Counters counters, NeighbourBound bound, int[][] allowed, int[] choice, ProofEffort effort, CancellationToken cancel)
    {
        using var hurry = effort.Deadline.With(cancel);
        var proof = new Proof(prices, counters, choice, effort, hurry.Token);
        try
        {
            return proof.Of(bound, allowed);
        }
        catch (Exception e) when (BrokenOff.Is(e) && effort.Deadline.HasPassed)
        {
            return proof.Ended(proof._shown);
        }
    }

    private ProvenChoice Of(NeighbourBound bound, int[][] allowed)
    {
        var ceiling = _price;
        var open = Below(ceiling);
        while (Array.TrueForAll(open, candidates => candidates.Length > 0) && Cells(_prices, open, Reaches[0]) > _effort.MostCells)
        {
            ceiling = Halfway(bound.Bound, ceiling);
            open = Below(ceiling);
        }

        return open.Any(candidates => candidates.Length == 0)
            ? Ended(ceiling)
            : Made(DualBound.OfChain(_prices, _counters, open, _cancel), ceiling);

        int[][] Below(long price) => [.. allowed.Select((candidates, slot) => candidates.Where(c => bound.Least(slot, c) < price).ToArray())];
    }

    // Where the tables would be too large for all candidates with which a choice might be cheaper, those are looked at with
    // which it might be cheaper than some lower ceiling: more than the ceiling is then not shown.
    private ProvenChoice Made(DualBound chain, long ceiling)
    {
        var left = chain.Below(Math.Min(ceiling, _price));
        Show(chain, ceiling);
        for (var step = 1; step < Reaches.Length && left is not null; step++)
        {
            while (left is not null && Cells(_prices, left.Candidates, Reaches[step]) > _effort.MostCells)
            {
                ceiling = Halfway(left.Bound, ceiling);
                left = left.Below(ceiling);
            }

            var isLast = step == Reaches.Length - 1;
            Show(left, ceiling);
            left = left is null ? null : Tightened(left.WithPairs(_prices, Reaches[step - 1], Reaches[step], _cancel), isLast ? SweepsAtRoot : SweepsAtStep, ceiling);
        }

        return Ended(left is null || Branch(left, ceiling) || IsSolved(left) ? ceiling : Math.Min(ceiling, left.Bound));
    }

    // The constraint solver on what is left, where branching came to no end.
    private bool IsSolved(DualBound left)
    {
        if (_effort.SolverTime <= 0 || _effort.Deadline.HasPassed || Cells(_prices, left.Candidates, int.MaxValue) > MostArcs)
        {
            return false;
        }

        var (ended, choice, price) = ConstraintModel.Cheapest(_prices, _counters, [.. left.Candidates], _effort.SolverTime, _cancel);
        if (choice is not null && price < _price)
        {
            (_choice, _price) = (choice, price);
        }

        return ended;
    }

    private void Show(DualBound? bound, long ceiling) => _shown = Math.Max(_shown, Math.Min(ceiling, bound?.Bound ?? ceiling));

    private static long Halfway(long from, long to) => from + ((to - from) / 2);

    private ProvenChoice Ended(long bound) => new(_choice, _price, Math.Min(bound, _price), _branches);

    private static long Cells(IChoicePrices prices, IReadOnlyList<int[]> candidates, int upTo) => Enumerable.Range(0, candidates.Count)
        .Sum(slot => prices.Linked(slot)
            .Where(other => other > slot && other - slot <= upTo)
            .Sum(other => (long)candidates[slot].Length * candidates[other].Length));

    // The bound swept until it stands nearly still; null where nothing cheaper is left.
    private DualBound? Tightened(DualBound bound, int mostSweeps, long ceiling)
    {
        for (var sweep = 0; sweep < mostSweeps && !_effort.Deadline.HasPassed; sweep++)
        {
            _cancel.ThrowIfCancellationRequested();
            var before = bound.Bound;
            bound.Sweep(Math.Min(_price, ceiling));
            if (bound.Below(Math.Min(_price, ceiling)) is not { } kept)
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
    private bool Branch(DualBound bound, long ceiling)
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
            if (++_branches > _effort.MostBranches || _effort.Deadline.HasPassed)
            {
                return false;
            }

            if (bound.Fixed(slot, place).Below(Math.Min(_price, ceiling)) is { } branch
                && Tightened(branch, SweepsAtBranch, ceiling) is { } left
                && !Branch(left, ceiling))
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
