using FsCheck.Xunit;
using Revoicer.Solving;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>The constraint solver shares the prices and the rules' tables with the search, and nothing of how it looks for the cheapest.</summary>
public sealed class ConstraintModelTests
{
    private const double Longest = 60;

    [Law(Arbitrary = [typeof(ProblemGens)], MaxTest = 40)]
    public void It_finds_the_price_of_the_cheapest_of_all_choices(ChoiceProblem problem)
    {
        var (ended, choice, price) = ConstraintModel.Cheapest(problem.Prices, problem.Counters, problem.Allowed, Longest, TestContext.Current.CancellationToken);

        Assert.True(ended);
        Assert.Equal(problem.Optimum(), choice is null ? null : price);
        Assert.True(choice is null || (problem.IsAllowed(choice) && problem.IsKept(choice) && problem.Prices.Price(choice) == price));
    }

    [Fact]
    public void It_gives_the_same_choice_on_every_run() => Assert.All(Enumerable.Range(0, 10), seed =>
    {
        var problem = ProblemGens.Problem(seed);
        int[]? Run() => ConstraintModel.Cheapest(problem.Prices, problem.Counters, problem.Allowed, Longest, TestContext.Current.CancellationToken).Choice;
        Assert.Equal(Run(), Run());
    });

    [Fact]
    public void Its_variables_are_named_by_slots_and_candidates()
    {
        var problem = ProblemGens.Larger(1);
        var text = ConstraintModel.TextOf(problem.Prices, problem.Counters, problem.Allowed);

        Assert.All(problem.Allowed.Index(), slot => Assert.All(slot.Item, c => Assert.Contains($"\"slot {slot.Index} candidate {c}\"", text, StringComparison.Ordinal)));
        var (last, before) = (problem.Allowed.Length - 1, problem.Prices.Linked(problem.Allowed.Length - 1)[0]);
        var arc = $"\"slot {before} candidate {problem.Allowed[before][0]} with slot {last} candidate {problem.Allowed[last][0]}\"";
        Assert.Contains(arc, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_time_it_says_that_it_came_to_no_end()
    {
        var problem = ProblemGens.Larger(1);
        var (ended, choice, _) = ConstraintModel.Cheapest(problem.Prices, problem.Counters, problem.Allowed, longest: 1e-9, TestContext.Current.CancellationToken);

        Assert.False(ended);
        Assert.Null(choice);
    }
}
