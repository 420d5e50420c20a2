using Revoicer.Tests.Solving;

namespace Revoicer.Tests.Oracles;

/// <summary>Coordinate descent in the full prices from random starts that keep the rules: simple, and quickly near the best.</summary>
internal static class Descents
{
    /// <summary>The price that each start comes to.</summary>
    public static IEnumerable<long> Of(ChoiceProblem problem, int starts)
    {
        var random = new Random(7);
        for (var start = 0; start < starts; start++)
        {
            var choice = Start(problem, random);
            while (Improved(problem, choice))
            {
            }

            yield return problem.Prices.Price(choice);
        }
    }

    private static int[] Start(ChoiceProblem problem, Random random)
    {
        int[] choice;
        do
        {
            choice = [.. problem.Allowed.Select(slot => slot[random.Next(slot.Length)])];
        }
        while (!problem.IsKept(choice));
        return choice;
    }

    private static bool Improved(ChoiceProblem problem, int[] choice)
    {
        for (var slot = 0; slot < choice.Length; slot++)
        {
            var (before, price) = (choice[slot], problem.Prices.Price(choice));
            foreach (var candidate in problem.Allowed[slot])
            {
                choice[slot] = candidate;
                if (problem.IsKept(choice) && problem.Prices.Price(choice) < price)
                {
                    return true;
                }
            }

            choice[slot] = before;
        }

        return false;
    }
}
