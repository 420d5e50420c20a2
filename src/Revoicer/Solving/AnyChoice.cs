using System.Globalization;
using Google.OrTools.Sat;
using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>
/// Looks for any choice at all that keeps the rules and has no pair that cannot follow each other, whatever it costs, with a
/// constraint solver. What is forbidden between two slots is stated once a choice that was found breaks it.
/// </summary>
internal sealed class AnyChoice
{
    private const string Settings = "num_workers:1,random_seed:1,max_deterministic_time:";

    // In the solver's own unit of work, very roughly a second; an estimate of what one would wait for.
    private const double LongestDeterministicTime = 20;

    private readonly CpModel _model = new();
    private readonly IChoicePrices _prices;
    private readonly ChosenLiteral[][] _chosen;

    private AnyChoice(IChoicePrices prices, int[][] allowed)
    {
        _prices = prices;
        _chosen = ChosenLiteral.Of(_model, allowed);
        foreach (var slot in _chosen)
        {
            _model.AddExactlyOne(slot.Select(c => c.IsChosen));
        }
    }

    /// <summary>The choice, or null, and whether that is certain: without it there may be one that was not found.</summary>
    /// <param name="prices">The prices; only what is forbidden is looked at.</param>
    /// <param name="allowed">For each slot the candidates that the rules on it allow.</param>
    /// <param name="counters">The rules that set a most.</param>
    /// <param name="leasts">The rules that ask for a least.</param>
    /// <param name="withMoves">Whether pairs that cannot follow each other matter.</param>
    /// <param name="cancel">Stops it.</param>
    public static (int[]? Choice, bool IsCertain) Of(
        IChoicePrices prices, int[][] allowed, Counters counters, IReadOnlyList<Least> leasts, bool withMoves, CancellationToken cancel)
    {
        if (allowed.Any(slot => slot.Length == 0))
        {
            return (null, true);
        }

        var any = new AnyChoice(prices, allowed);
        counters.AddTo(any._model, any._chosen);
        foreach (var least in leasts)
        {
            any.Add(least);
        }

        while (true)
        {
            cancel.ThrowIfCancellationRequested();
            var (choice, isCertain) = any.Solved(cancel);
            if (choice is null || !withMoves || !any.Forbids(choice))
            {
                return (choice, isCertain);
            }
        }
    }

    private void Add(Least least)
    {
        var count = LinearExpr.NewBuilder();
        for (var slot = 0; slot < _chosen.Length; slot++)
        {
            count.AddSum(_chosen[slot].Where(c => least.Counts[slot][c.Candidate]).Select(c => c.IsChosen));
        }

        _model.Add(count >= least.AtLeast);
    }

    // States all that is forbidden in the slots, and between the slots, where a choice has something forbidden.
    private bool Forbids(int[] choice)
    {
        var found = false;
        for (var slot = 0; slot < choice.Length; slot++)
        {
            if (_prices.Alone(slot)[choice[slot]] >= Thousandths.Forbidden)
            {
                found = true;
                _model.AddBoolAnd(_chosen[slot].Where(c => _prices.Alone(slot)[c.Candidate] >= Thousandths.Forbidden).Select(c => c.IsChosen.Not()));
            }

            foreach (var other in _prices.Linked(slot).Where(o => o > slot && _prices.Pair(slot, choice[slot], o, choice[o]) >= Thousandths.Forbidden))
            {
                found = true;
                StatePairs(slot, other);
            }
        }

        return found;
    }

    // Candidates that exclude the same ones of the other slot are stated together: of all of these at most one is chosen, as
    // of each slot only one is anyway.
    private void StatePairs(int slot, int other)
    {
        int[] others = [.. _chosen[other].Select(c => c.Candidate)];
        var pairs = new long[others.Length];
        var groups = new Dictionary<string, List<BoolVar>>();
        foreach (var (candidate, isChosen) in _chosen[slot])
        {
            _prices.PairPrices(slot, candidate, other, others, pairs);
            var excluded = string.Concat(pairs.Select(p => p >= Thousandths.Forbidden ? '1' : '0'));
            (groups.TryGetValue(excluded, out var alike) ? alike : groups[excluded] = []).Add(isChosen);
        }

        foreach (var (excluded, alike) in groups.Where(g => g.Key.Contains('1', StringComparison.Ordinal)))
        {
            _model.AddAtMostOne(alike.Concat(_chosen[other].Where((_, place) => excluded[place] == '1').Select(c => c.IsChosen)));
            if (!excluded.Contains('0', StringComparison.Ordinal))
            {
                _model.AddBoolAnd(alike.Select(c => c.Not()));
            }
        }
    }

    private (int[]? Choice, bool IsCertain) Solved(CancellationToken cancel)
    {
        var solver = new CpSolver
        {
            StringParameters = Settings + LongestDeterministicTime.ToString(CultureInfo.InvariantCulture),
        };
        return Stoppable.Solve(solver, _model, cancel) switch
        {
            CpSolverStatus.Optimal or CpSolverStatus.Feasible =>
                ([.. _chosen.Select(slot => slot.First(c => solver.BooleanValue(c.IsChosen)).Candidate)], true),
            CpSolverStatus.Infeasible => (null, true),
            _ => (null, false),
        };
    }
}
