using Revoicer.Prices;
using Revoicer.Values;

namespace Revoicer.Solving;

/// <summary>
/// Finds a good choice in the full model: the chain of neighbours is solved exactly, what rings from farther off is taken
/// from the present answer as a background, and again until the answer stands still; then single slots are changed for
/// the better among all their candidates.
/// </summary>
internal sealed class Rounds
{
    private const int MostRounds = 12;

    private readonly IChoicePrices _prices;
    private readonly Counters _counters;
    private readonly int[][] _allowed;
    private readonly Chain _chain;
    private readonly Deadline _deadline;

    /// <summary>Prepares the search.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="counters">The rules that count.</param>
    /// <param name="allowed">For each slot the candidates that the rules on it allow.</param>
    /// <param name="promising">For each slot those of them that the chain chooses from.</param>
    /// <param name="deadline">When the best so far is taken.</param>
    /// <param name="cancel">Stops the work.</param>
    public Rounds(IChoicePrices prices, Counters counters, int[][] allowed, int[][] promising, Deadline deadline, CancellationToken cancel)
    {
        _prices = prices;
        _counters = counters;
        _allowed = allowed;
        _chain = new Chain(prices, counters, promising, cancel);
        _deadline = deadline;
    }

    /// <summary>
    /// The best choice from one start; null where the counting rules cannot be kept among the promising candidates.
    /// </summary>
    /// <param name="start">A choice whose ringing is the first background; null for none.</param>
    /// <param name="cancel">Stops the search.</param>
    public (int[] Choice, long Price)? From(int[]? start, CancellationToken cancel)
    {
        var background = start is null ? null : Background(start);
        (int[] Choice, long Price)? best = null;
        int[]? before = null;
        try
        {
            for (var round = 0; round < MostRounds; round++)
            {
                var choice = _chain.Cheapest(background, cancel);
                if (choice is null)
                {
                    return null;
                }

                var price = _prices.Whole(choice);
                if (best is null || price < best.Value.Price)
                {
                    best = (choice, price);
                }

                if (before is not null && choice.AsSpan().SequenceEqual(before))
                {
                    break;
                }

                before = choice;
                background = Background(choice);
            }

            var polished = Polished(best!.Value.Choice, cancel);
            return (polished, _prices.Whole(polished));
        }
        catch (Exception e) when (BrokenOff.Is(e) && best is not null && _deadline.HasPassed)
        {
            return best;
        }
    }

    // What each promising candidate costs with the chosen ones of all slots that are not its neighbours.
    private long[][] Background(int[] choice)
    {
        var background = new long[_prices.Count][];
        Parallel.For(0, background.Length, slot =>
        {
            background[slot] = new long[_chain.Candidates[slot].Length];
            _prices.AddPairs(choice, slot, _chain.Candidates[slot], background[slot], other => Math.Abs(other - slot) > 1);
        });
        return background;
    }

    // One slot at a time, the cheapest candidate with all others as they are, until none gets cheaper.
    private int[] Polished(int[] start, CancellationToken cancel)
    {
        var choice = (int[])start.Clone();
        bool improved;
        do
        {
            improved = false;
            for (var slot = 0; slot < choice.Length; slot++)
            {
                cancel.ThrowIfCancellationRequested();
                improved |= Improve(choice, slot);
            }
        }
        while (improved);
        return choice;
    }

    private bool Improve(int[] choice, int slot)
    {
        var candidates = _allowed[slot];
        var costs = _prices.InPlace(choice, slot, candidates);
        var best = Array.IndexOf(candidates, choice[slot]);
        for (var i = 0; i < candidates.Length; i++)
        {
            if (costs[i] < costs[best] && _counters.AllowsChange(choice, slot, candidates[i]))
            {
                best = i;
            }
        }

        var changed = candidates[best] != choice[slot];
        choice[slot] = candidates[best];
        return changed;
    }
}
