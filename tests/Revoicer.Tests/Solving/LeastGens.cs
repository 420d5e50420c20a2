using Revoicer.Solving;

namespace Revoicer.Tests.Solving;

/// <summary>Rules that ask for a least, and counts that seldom bind, over the problems of <see cref="ProblemGens"/>.</summary>
internal static class LeastGens
{
    /// <summary>One or two rules over a stretch or all of the slots, that mostly bite and sometimes cannot be kept.</summary>
    public static Least[] Leasts(ChoiceProblem problem, int seed)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, random.Next(1, 3)).Select(_ => Rule(random, problem))];
    }

    /// <summary>The problem's counts, some of them seldom ones.</summary>
    public static Counters SomeSeldom(ChoiceProblem problem, int seed)
    {
        var random = new Random(seed);
        return new Counters(problem.PhraseOfSlot, problem.Rules.Select(r => r with { IsSeldom = random.Next(3) > 0 }).ToArray());
    }

    private static Least Rule(Random random, ChoiceProblem problem)
    {
        var slots = problem.Allowed.Length;
        var from = random.Next(slots);
        var to = random.Next(from, slots);
        var inStretch = Enumerable.Range(0, slots).Select(s => s >= from && s <= to).ToArray();
        return new Least(
            [.. Enumerable.Range(0, slots).Select(s => problem.Prices.Alone(s).ToArray().Select(_ => inStretch[s] && random.Next(2) == 0).ToArray())],
            random.Next(1, to - from + 2),
            inStretch);
    }
}
