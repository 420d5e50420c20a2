using System.Globalization;
using Google.OrTools.Sat;
using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>
/// Looks for any choice at all that keeps the rules and has no pair that cannot follow each other, whatever it costs, with a
/// constraint solver. Pairs are stated as they turn up in a choice that was found.
/// </summary>
internal sealed class AnyChoice
{
    private const string Settings = "num_workers:1,random_seed:1,max_deterministic_time:";

    // In the solver's own unit of work, very roughly a second; an estimate of what one would wait for.
    private const double LongestDeterministicTime = 20;

    // So often pairs are stated before it is given up. An estimate; on the demos some ten are enough.
    private const int MostTried = 300;

    private readonly CpModel _model = new();
    private readonly IChoicePrices _prices;
    private readonly ChosenLiteral[][] _chosen;

    private AnyChoice(IChoicePrices prices, int[][] allowed)
    {
        _prices = prices;
        _chosen = [.. allowed.Select(slot => slot.Select(c => new ChosenLiteral(c, _model.NewBoolVar(""))).ToArray())];
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

        for (var tried = 0; tried < MostTried; tried++)
        {
            cancel.ThrowIfCancellationRequested();
            var (choice, isCertain) = any.Solved();
            if (choice is null || !withMoves || !any.Forbids(choice))
            {
                return (choice, isCertain);
            }
        }

        return (null, false);
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

    // States, for every forbidden pair in a choice, all that the one cannot be together with in the other's slot.
    private bool Forbids(int[] choice)
    {
        var found = false;
        for (var slot = 0; slot < choice.Length; slot++)
        {
            if (_prices.Alone(slot)[choice[slot]] >= Thousandths.Forbidden)
            {
                found = true;
                _model.AddBoolAnd([Literal(slot, choice[slot]).Not()]);
            }

            foreach (var other in _prices.Linked(slot).Where(o => o > slot && _prices.Pair(slot, choice[slot], o, choice[o]) >= Thousandths.Forbidden))
            {
                found = true;
                Exclude(slot, choice[slot], other);
                Exclude(other, choice[other], slot);
            }
        }

        return found;
    }

    private void Exclude(int slot, int candidate, int other)
    {
        int[] candidates = [.. _chosen[other].Select(c => c.Candidate)];
        var pairs = new long[candidates.Length];
        _prices.PairPrices(slot, candidate, other, candidates, pairs);
        var excluded = _chosen[other].Where((_, place) => pairs[place] >= Thousandths.Forbidden).Select(c => c.IsChosen.Not());
        _model.AddBoolAnd(excluded).OnlyEnforceIf(Literal(slot, candidate));
    }

    private BoolVar Literal(int slot, int candidate) => _chosen[slot].First(c => c.Candidate == candidate).IsChosen;

    private (int[]? Choice, bool IsCertain) Solved()
    {
        var solver = new CpSolver
        {
            StringParameters = Settings + LongestDeterministicTime.ToString(CultureInfo.InvariantCulture),
        };
        return solver.Solve(_model) switch
        {
            CpSolverStatus.Optimal or CpSolverStatus.Feasible =>
                ([.. _chosen.Select(slot => slot.First(c => solver.BooleanValue(c.IsChosen)).Candidate)], true),
            CpSolverStatus.Infeasible => (null, true),
            _ => (null, false),
        };
    }
}
