using FsCheck.Xunit;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Tests.Oracles;
using Revoicer.Tests.Values;
using Xunit;

namespace Revoicer.Tests.Solving;

public sealed class SearchTests
{
    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void The_answer_keeps_the_rules_is_the_cheapest_of_all_and_is_known_to_be(ChoiceProblem problem)
    {
        var optimum = problem.Optimum();
        var answer = Run(problem.Prices, problem);

        Assert.Equal(optimum, answer?.Price);
        if (answer is { } found)
        {
            Assert.True(problem.IsAllowed(found.Choice) && problem.IsKept(found.Choice));
            Assert.Equal(problem.Prices.Price(found.Choice), found.Price);
            Assert.Equal(found.Price, found.Bound);
        }
    }

    // Too large for every choice to be looked at: a constraint solver and descents from many random starts are asked instead.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void On_larger_problems_it_agrees_with_a_constraint_solver_and_no_descent_is_cheaper(int seed)
    {
        var problem = ProblemGens.Larger(seed);
        var answer = Run(problem.Prices, problem)!.Value;
        var (ended, _, price) = ConstraintModel.Cheapest(problem.Prices, problem.Counters, problem.Allowed, longest: 60, TestContext.Current.CancellationToken);

        Assert.True(ended);
        Assert.Equal(price, answer.Price);
        Assert.Equal(answer.Price, answer.Bound);
        Assert.All(Descents.Of(problem, starts: 40), found => Assert.True(found >= answer.Price));
    }

    // With nothing to spend the bound is weaker, and still a bound.
    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void With_little_to_spend_the_optimum_lies_between_bound_and_price(ChoiceProblem problem)
    {
        var answer = Search.Run(problem.Prices, problem.Allowed, problem.Counters, new ProofEffort(0, 20, 0), TestContext.Current.CancellationToken);
        Assert.True(answer is not { } found || problem.Optimum() is { } optimum && found.Bound <= optimum && optimum <= found.Price);
    }

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void In_a_hurry_it_still_has_an_answer(ChoiceProblem problem)
    {
        var hurried = ProofEffort.Thorough with { Deadline = SteppedClock.Passed() };
        var answer = Search.Run(problem.Prices, problem.Allowed, problem.Counters, hurried, TestContext.Current.CancellationToken);
        var optimum = problem.Optimum();

        Assert.Equal(optimum is null, answer is null);
        Assert.True(answer is not { } found || (problem.IsKept(found.Choice) && found.Bound <= optimum && optimum <= found.Price));
    }

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void Two_runs_give_the_same_choice(ChoiceProblem problem) =>
        Assert.Equal(Run(problem.Prices, problem)?.Choice, Run(problem.Prices, problem)?.Choice);

    // More candidates than the chain chooses from: without rules those it leaves out are never needed.
    [Fact]
    public void In_slots_of_many_candidates_the_answer_is_the_optimum_of_the_chain()
    {
        var sizes = new[] { 400, 300, 700 };
        var prices = ProblemGens.Prices(new Random(1), sizes, distance => distance == 1 ? 1 : 0, dearest: 5000, dearestPair: 5000);
        int[][] all = [.. sizes.Select(size => Enumerable.Range(0, size).ToArray())];
        var none = new Counters([0, 0, 0], []);

        var answer = Search.Run(prices, all, none, ProofEffort.Quick, TestContext.Current.CancellationToken);

        Assert.Equal(prices.Price(new Chain(prices, none, all, TestContext.Current.CancellationToken).Cheapest(background: null, TestContext.Current.CancellationToken)!), answer!.Value.Price);
        Assert.Equal(answer.Value.Bound, answer.Value.Price);
    }

    // All that look promising count, and none may: the cheapest that does not count is still found.
    [Fact]
    public void A_rule_that_forbids_all_cheap_candidates_is_kept()
    {
        var prices = new TablePrices([[.. Enumerable.Range(0, 400).Select(c => (long)c)], [0]], new Dictionary<(int, int), long[,]>());
        var rule = new Counter([[.. Enumerable.Range(0, 400).Select(c => c < 300 ? 1 : 0)], [0]], [0]);

        var answer = Search.Run(prices, [[.. Enumerable.Range(0, 400)], [0]], new Counters([0, 0], [rule]), ProofEffort.Quick, TestContext.Current.CancellationToken);

        Assert.Equal([300, 0], answer!.Value.Choice);
    }

    [Fact]
    public void A_search_that_is_cancelled_ends_with_that()
    {
        var problem = ProblemGens.Problem(1);
        Assert.Throws<OperationCanceledException>(() =>
            Search.Run(problem.Prices, problem.Allowed, problem.Counters, ProofEffort.Quick, new CancellationToken(canceled: true)));
    }

    private static BoundedChoice? Run(IChoicePrices prices, ChoiceProblem problem) =>
        Search.Run(prices, problem.Allowed, problem.Counters, ProofEffort.Quick, TestContext.Current.CancellationToken);
}
