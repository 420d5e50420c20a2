using FsCheck.Xunit;
using Revoicer.Solving;
using Revoicer.Tests.Oracles;
using Xunit;

namespace Revoicer.Tests.Solving;

public sealed class CountersTests
{
    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void A_choice_keeps_the_counts_where_counting_says_so(ChoiceProblem problem) =>
        Assert.All(BruteForce.Choices(problem.Allowed), choice => Assert.Equal(problem.IsKept(choice), problem.Counters.AreKept(choice)));

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void Carrying_the_state_along_ends_early_where_a_count_is_exceeded_and_nowhere_else(ChoiceProblem problem) =>
        Assert.All(BruteForce.Choices(problem.Allowed), choice => Assert.Equal(problem.IsKept(choice), Carries(problem.Counters, choice)));

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void A_change_in_one_slot_is_allowed_where_the_changed_choice_is_kept(ChoiceProblem problem) =>
        Assert.All(BruteForce.Choices(problem.Allowed).Where(problem.IsKept), choice =>
        {
            for (var slot = 0; slot < choice.Length; slot++)
            {
                foreach (var candidate in problem.Allowed[slot])
                {
                    var changed = (int[])choice.Clone();
                    changed[slot] = candidate;
                    Assert.Equal(problem.IsKept(changed), problem.Counters.AllowsChange(choice, slot, candidate));
                }
            }
        });

    private static bool Carries(Counters counters, int[] choice)
    {
        var state = 0;
        for (var slot = 0; slot < choice.Length && state >= 0; slot++)
        {
            state = counters.After(counters.StartsPhrase(slot) ? 0 : state, slot, choice[slot]);
            Assert.InRange(state, -1, counters.States - 1);
        }

        return state >= 0;
    }
}
