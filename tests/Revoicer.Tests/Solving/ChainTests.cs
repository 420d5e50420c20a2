using FsCheck.Xunit;
using Revoicer.Solving;
using Revoicer.Tests.Oracles;
using Xunit;

namespace Revoicer.Tests.Solving;

public sealed class ChainTests
{
    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void The_chain_finds_the_cheapest_of_all_choices(ChoiceProblem problem)
    {
        var choice = new Chain(problem.Near, problem.Counters, problem.Allowed, TestContext.Current.CancellationToken).Cheapest(background: null, TestContext.Current.CancellationToken);

        AssertCheapest(problem, choice, problem.Near.Price);
    }

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void A_background_is_added_to_what_candidates_cost_alone(ChoiceProblem problem)
    {
        var choice = new Chain(problem.Near, problem.Counters, problem.Allowed, TestContext.Current.CancellationToken).Cheapest(problem.Background, TestContext.Current.CancellationToken);

        AssertCheapest(problem, choice, c => problem.Near.Price(c) + problem.BackgroundOf(c));
    }

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void What_lies_farther_off_than_the_neighbour_is_not_looked_at(ChoiceProblem problem) => Assert.Equal(
        new Chain(problem.Near, problem.Counters, problem.Allowed, TestContext.Current.CancellationToken).Cheapest(problem.Background, TestContext.Current.CancellationToken),
        new Chain(problem.Prices, problem.Counters, problem.Allowed, TestContext.Current.CancellationToken).Cheapest(problem.Background, TestContext.Current.CancellationToken));

    private static void AssertCheapest(ChoiceProblem problem, int[]? choice, Func<int[], long> price)
    {
        Assert.Equal(BruteForce.Least(problem.Allowed, problem.IsKept, price), choice is null ? null : price(choice));
        Assert.True(choice is null || (problem.IsAllowed(choice) && problem.IsKept(choice)));
    }
}
