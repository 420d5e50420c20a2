using FsCheck.Xunit;
using Revoicer.Solving;
using Revoicer.Tests.Oracles;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>
/// What is lent and given back only moves prices about: every choice costs the same before and after, so the sum of the least
/// of all parts stays a lower bound; and lending no more than a candidate has over the cheapest way cannot lower that way.
/// </summary>
public sealed class DualBoundTests
{
    private const int Sweeps = 12;

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void The_bound_rises_and_no_choice_is_cheaper(ChoiceProblem problem)
    {
        var optimum = problem.Optimum() ?? long.MaxValue;
        var bound = Whole(problem);
        var before = bound.Bound;
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            bound.Sweep(enough: 1000);
            Assert.InRange(bound.Bound, before, Math.Max(before, optimum));
            before = bound.Bound;
        }

        Assert.True(bound.Bound <= optimum);
    }

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void Taking_candidates_away_keeps_every_choice_that_is_cheap_enough(ChoiceProblem problem)
    {
        if (problem.Optimum() is not { } optimum)
        {
            return;
        }

        DualBound? bound = Whole(problem);
        var price = optimum + 7;
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            bound.Sweep(price);
            bound = bound.Below(price);
            Assert.NotNull(bound);
        }

        Assert.All(
            BruteForce.Choices(problem.Allowed).Where(c => problem.IsKept(c) && problem.Prices.Price(c) < price),
            choice => Assert.True(choice.Index().All(c => bound.Candidates[c.Index].Contains(c.Item))));
    }

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void Below_the_optimum_nothing_is_left_in_the_end(ChoiceProblem problem)
    {
        var optimum = problem.Optimum();
        var found = Proof.Of(problem.Prices, problem.Counters, NeighbourBound.Of(problem.Prices, problem.Allowed), problem.Allowed, Start(problem), ProofEffort.Quick, TestContext.Current.CancellationToken);
        Assert.True(optimum is null || (found.Price == optimum && found.Bound == optimum && problem.IsKept(found.Choice)));
    }

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void What_the_bound_suggests_keeps_the_rules(ChoiceProblem problem)
    {
        var bound = Whole(problem);
        bound.Sweep(enough: 1000);
        Assert.True(bound.Suggestion() is not { } choice || (problem.IsAllowed(choice) && problem.IsKept(choice)));
    }

    // Any choice that keeps the rules; where none does, any at all, and nothing is asked of the result.
    private static int[] Start(ChoiceProblem problem) =>
        BruteForce.Choices(problem.Allowed).Where(problem.IsKept).LastOrDefault() ?? [.. problem.Allowed.Select(a => a[0])];

    private static DualBound Whole(ChoiceProblem problem) =>
        DualBound.OfChain(problem.Prices, problem.Counters, problem.Allowed, TestContext.Current.CancellationToken).WithPairs(problem.Prices, 1, int.MaxValue, TestContext.Current.CancellationToken);
}
