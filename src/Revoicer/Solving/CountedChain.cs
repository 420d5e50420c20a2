namespace Revoicer.Solving;

/// <summary>
/// The slots in a row with their own prices and those of neighbours, and the counting rules: the cheapest way from either
/// end to every candidate, by state of the counts. Own prices belong to the caller, who asks for a slot again when he has
/// changed them.
/// </summary>
internal sealed class CountedChain
{
    private readonly Counters _counters;
    private readonly int[][] _candidates;
    private readonly int[][] _own;
    private readonly PairTable[] _withBefore;

    // Slot x state x place: the least of all slots up to that one, the candidate's own price included; and of all after it.
    private readonly int[][][] _upTo;
    private readonly int[][][] _after;

    /// <param name="counters">The counting rules.</param>
    /// <param name="candidates">For each slot its candidates.</param>
    /// <param name="own">For each slot and candidate what it costs by itself.</param>
    /// <param name="withBefore">For each slot but the first its prices with the slot before.</param>
    public CountedChain(Counters counters, int[][] candidates, int[][] own, PairTable[] withBefore)
    {
        (_counters, _candidates, _own, _withBefore) = (counters, candidates, own, withBefore);
        _upTo = new int[candidates.Length][][];
        _after = new int[candidates.Length][][];
    }

    private int Last => _candidates.Length - 1;

    /// <summary>Works out the ways to a slot from the first; those to the slot before have to be known.</summary>
    public void FromStart(int slot)
    {
        var ways = Nothing(slot);
        if (slot == 0)
        {
            Enter(slot, 0, new int[_candidates[0].Length], ways);
        }
        else
        {
            foreach (var entered in _upTo[slot - 1].Select((cost, state) => (State: _counters.Before(slot, state), cost)).GroupBy(w => w.State))
            {
                Enter(slot, entered.Key, _withBefore[slot].LeastOfRows(Least([.. entered.Select(w => w.cost)])), ways);
            }
        }

        _upTo[slot] = ways;
    }

    /// <summary>Works out the ways from a slot to the last; those from the slot after have to be known.</summary>
    public void FromEnd(int slot)
    {
        if (slot == Last)
        {
            _after[slot] = [.. Enumerable.Range(0, _counters.States).Select(_ => new int[_candidates[slot].Length])];
            return;
        }

        var ways = new int[_counters.States][];
        for (var state = 0; state < ways.Length; state++)
        {
            var entered = _counters.Before(slot + 1, state);
            ways[state] = entered < state ? ways[entered] : _withBefore[slot + 1].LeastOfColumns(Onward(slot + 1, entered));
        }

        _after[slot] = ways;
    }

    /// <summary>For each candidate of a slot the cheapest way through it; both sides of the slot have to be known.</summary>
    public int[] Through(int slot)
    {
        var through = new int[_candidates[slot].Length];
        Array.Fill(through, PairTable.Never);
        for (var state = 0; state < _counters.States; state++)
        {
            for (var place = 0; place < through.Length; place++)
            {
                through[place] = Math.Min(through[place], Sum(_upTo[slot][state][place], _after[slot][state][place]));
            }
        }

        return through;
    }

    /// <summary>Takes off every way to a candidate what has been taken off its own price.</summary>
    public void Lower(int slot, int place, int amount)
    {
        foreach (var ways in _upTo[slot].Where(w => w[place] < PairTable.Never))
        {
            ways[place] -= amount;
        }
    }

    /// <summary>The places of the cheapest choice; null where none keeps the counts. All ways from the end have to be known.</summary>
    public int[]? Cheapest()
    {
        var places = new int[_candidates.Length];
        var state = 0;
        for (var slot = 0; slot < places.Length; slot++)
        {
            var entered = slot == 0 ? 0 : _counters.Before(slot, state);
            var onward = Onward(slot, entered);
            for (var place = 0; slot > 0 && place < onward.Length; place++)
            {
                onward[place] = Sum(onward[place], _withBefore[slot][places[slot - 1], place]);
            }

            places[slot] = Array.IndexOf(onward, onward.Min());
            if (onward[places[slot]] >= PairTable.Never)
            {
                return null;
            }

            state = _counters.After(entered, slot, _candidates[slot][places[slot]]);
        }

        return places;
    }

    // For each candidate its own price and the least of all slots after it, entered in a state.
    private int[] Onward(int slot, int entered)
    {
        var costs = new int[_candidates[slot].Length];
        for (var place = 0; place < costs.Length; place++)
        {
            var state = _counters.After(entered, slot, _candidates[slot][place]);
            costs[place] = state < 0 ? PairTable.Never : Sum(_own[slot][place], _after[slot][state][place]);
        }

        return costs;
    }

    private void Enter(int slot, int entered, int[] before, int[][] ways)
    {
        for (var place = 0; place < before.Length; place++)
        {
            var state = _counters.After(entered, slot, _candidates[slot][place]);
            if (state >= 0)
            {
                ways[state][place] = Math.Min(ways[state][place], Sum(before[place], _own[slot][place]));
            }
        }
    }

    private int[][] Nothing(int slot)
    {
        var ways = new int[_counters.States][];
        for (var state = 0; state < ways.Length; state++)
        {
            ways[state] = new int[_candidates[slot].Length];
            Array.Fill(ways[state], PairTable.Never);
        }

        return ways;
    }

    private static int[] Least(int[][] costs)
    {
        var least = (int[])costs[0].Clone();
        foreach (var cost in costs.Skip(1))
        {
            for (var place = 0; place < least.Length; place++)
            {
                least[place] = Math.Min(least[place], cost[place]);
            }
        }

        return least;
    }

    private static int Sum(int a, int b) => Math.Min(PairTable.Never, a + b);
}
