using FsCheck;
using FsCheck.Xunit;
using Revoicer.Solving;
using Revoicer.Tests.Oracles;
using Xunit;

namespace Revoicer.Tests.Solving;

public sealed class NeighbourBoundTests
{
    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void No_choice_is_cheaper_than_the_bound(ChoiceProblem problem) => Assert.True(
        NeighbourBound.Of(problem.Prices, problem.Allowed).Bound <= (problem.Optimum() ?? long.MaxValue));

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void No_choice_that_holds_a_candidate_is_cheaper_than_its_least(ChoiceProblem problem)
    {
        var bound = NeighbourBound.Of(problem.Prices, problem.Allowed);
        foreach (var choice in BruteForce.Choices(problem.Allowed))
        {
            var price = problem.Prices.Price(choice);
            Assert.All(choice, (candidate, slot) => Assert.InRange(bound.Least(slot, candidate), bound.Bound, price));
        }
    }

    // A candidate so dear alone that another is the better partner of all that may come next has a least below the truth,
    // but never below the bound: its least already covers the other's cost with its dearest partner.
    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void Without_far_links_and_rules_the_bound_is_the_optimum(ChoiceProblem problem) => Assert.Equal(
        BruteForce.Least(problem.Allowed, _ => true, problem.Near.Price),
        NeighbourBound.Of(problem.Near, problem.Allowed).Bound);

    // Slots this large make it ask for partners in portions; where candidates differ more than pairs it leaves some out as
    // too dear, where pairs differ more it has to look far down the list.
    [Law(MaxTest = 30)]
    public void In_a_long_row_of_many_candidates_it_is_what_the_chain_finds(int seed)
    {
        var random = new Random(seed);
        var sizes = Enumerable.Range(0, 6).Select(_ => random.Next(1, 120)).ToArray();
        var (dearest, dearestPair) = random.Next(2) == 0 ? (1000, 100) : (10, 1000);
        var prices = ProblemGens.Prices(random, sizes, distance => distance == 1 ? 0.9 : 0, dearest, dearestPair);
        int[][] all = [.. sizes.Select(size => Enumerable.Range(0, size).ToArray())];

        var bound = NeighbourBound.Of(prices, all);
        var choice = new Chain(prices, new Counters(new int[sizes.Length], []), all, TestContext.Current.CancellationToken).Cheapest(background: null, TestContext.Current.CancellationToken);

        Assert.Equal(prices.Price(choice!), bound.Bound);
        Assert.All(choice!, (candidate, slot) => Assert.Equal(bound.Bound, bound.Least(slot, candidate)));
        Assert.All(all, (slot, index) => Assert.All(slot, c => Assert.True(bound.Least(index, c) >= bound.Bound)));
    }
}
