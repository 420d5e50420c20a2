using Revoicer.Solving;
using Revoicer.Tests.Oracles;
using Xunit;

namespace Revoicer.Tests.Solving;

public sealed class SeldomRulesTests
{
    [Law]
    public void Counts_left_out_at_first_are_kept_all_the_same(int seed)
    {
        var problem = ProblemGens.Problem(seed);
        var answer = Run(problem.Prices, problem, seed);

        Assert.Equal(problem.Optimum() is null, answer is null);
        if (answer is { } found)
        {
            Assert.True(problem.IsAllowed(found.Choice) && problem.IsKept(found.Choice));
            Assert.InRange(problem.Optimum()!.Value, found.Bound, found.Price);
        }
    }

    [Law]
    public void With_neighbour_links_only_the_answer_is_the_optimum(int seed)
    {
        var problem = ProblemGens.Problem(seed);
        Assert.Equal(BruteForce.Least(problem.Allowed, problem.IsKept, problem.Near.Price), Run(problem.Near, problem, seed)?.Price);
    }

    private static BoundedChoice? Run(TablePrices prices, ChoiceProblem problem, int seed) => SeldomRules.Run(
        prices, problem.Allowed, LeastGens.SomeSeldom(problem, seed), [], ProofEffort.Quick, TestContext.Current.CancellationToken);
}
