using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>
/// The search under counts of which some seldom bind. Each count multiplies the states that the chain carries along, so a
/// seldom one is left out until an answer breaks it; what keeps it without being made to is the cheapest with it too.
/// </summary>
internal static class SeldomRules
{
    /// <summary>The answer, its price, a bound and the starts; null where none was found that keeps all rules.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="allowed">For each slot the candidates that the rules on it allow; at least one.</param>
    /// <param name="counters">The rules that set a most.</param>
    /// <param name="leasts">The rules that ask for a least.</param>
    /// <param name="effort">What may be spent on showing how good the answer is.</param>
    /// <param name="cancel">Stops the search.</param>
    public static BoundedChoice? Run(
        IChoicePrices prices, int[][] allowed, Counters counters, IReadOnlyList<Least> leasts, ProofEffort effort, CancellationToken cancel)
    {
        var leftOut = counters.All.Where(c => c.IsSeldom).ToHashSet();
        while (true)
        {
            var answer = Steering.Run(prices, allowed, counters.Without(leftOut), leasts, effort, cancel);
            var broken = answer is { } found ? leftOut.Where(c => !counters.IsKept(c, found.Choice)).ToList() : [];
            if (broken.Count == 0)
            {
                return answer;
            }

            leftOut.ExceptWith(broken);
        }
    }
}
