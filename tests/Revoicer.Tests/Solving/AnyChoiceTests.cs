using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Tests.Oracles;
using Xunit;

namespace Revoicer.Tests.Solving;

public sealed class AnyChoiceTests
{
    [Law(MaxTest = 60)]
    public void There_is_one_where_looking_at_all_finds_one(int seed)
    {
        var problem = ProblemGens.Problem(seed);
        var leasts = LeastGens.Leasts(problem, seed);
        foreach (var withMoves in new[] { true, false })
        {
            bool IsOne(int[] choice) => problem.IsKept(choice)
                && leasts.All(l => choice.Index().Count(c => l.Counts[c.Index][c.Item]) >= l.AtLeast)
                && (!withMoves || HasNothingForbidden(problem, choice));

            var (found, isCertain) = AnyChoice.Of(
                problem.Prices, problem.Allowed, problem.Counters, leasts, withMoves, TestContext.Current.CancellationToken);

            Assert.True(isCertain);
            Assert.Equal(BruteForce.Choices(problem.Allowed).Any(IsOne), found is not null);
            Assert.True(found is null || (problem.IsAllowed(found) && IsOne(found)));
        }
    }

    [Fact]
    public void A_slot_without_candidates_has_none()
    {
        var problem = ProblemGens.Problem(1);
        int[][] allowed = [.. problem.Allowed.Skip(1).Prepend([])];

        Assert.Equal((null, true), AnyChoice.Of(problem.Prices, allowed, problem.NoCounters, [], withMoves: true, TestContext.Current.CancellationToken));
    }

    private static bool HasNothingForbidden(ChoiceProblem problem, int[] choice) => Enumerable.Range(0, choice.Length).All(slot =>
        problem.Prices.Alone(slot)[choice[slot]] < Thousandths.Forbidden
        && problem.Prices.Linked(slot).All(other => problem.Prices.Pair(slot, choice[slot], other, choice[other]) < Thousandths.Forbidden));
}
