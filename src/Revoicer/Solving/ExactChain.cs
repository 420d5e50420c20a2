using System.Globalization;
using Google.OrTools.Sat;
using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>The literal of a constraint model that says whether a candidate is chosen.</summary>
internal readonly record struct ChosenLiteral(int Candidate, BoolVar IsChosen);

/// <summary>
/// The problem of <see cref="Chain"/> stated to a constraint solver instead: a flow of one unit from the first slot to
/// the last through one candidate each, priced on the candidates and on the arcs between neighbours. It is slow, shares
/// nothing with the dynamic programme but the rules, and takes any further rule that can be stated as a constraint.
/// </summary>
internal sealed class ExactChain
{
    // One worker and a fixed seed give the same answer on every run; with the linear relaxation at its strongest and
    // without presolve the flow form was solved quickest of the settings tried (64 slots of 20 and of 60 candidates).
    private const string Settings =
        "num_workers:1,random_seed:1,linearization_level:2,cp_model_presolve:false,max_deterministic_time:";

    // In the solver's own unit of work, very roughly a second; an estimate of what one would wait for.
    private const double LongestDeterministicTime = 60;

    private readonly CpModel _model = new();
    private readonly LinearExprBuilder _price = LinearExpr.NewBuilder();
    private readonly IChoicePrices _prices;
    private readonly ChosenLiteral[][] _chosen;

    private ExactChain(IChoicePrices prices, int[][] candidates)
    {
        _prices = prices;
        _chosen = [.. candidates.Select(slot => slot.Select(c => new ChosenLiteral(c, _model.NewBoolVar(""))).ToArray())];
    }

    /// <summary>
    /// The cheapest choice that keeps the counts, by candidates alone, neighbours and background, and that price; null
    /// where none keeps them. Of equals it takes any.
    /// </summary>
    /// <param name="prices">The prices; only pairs of neighbours are looked at.</param>
    /// <param name="counters">The rules that count.</param>
    /// <param name="candidates">For each slot the candidates to choose from; at least one.</param>
    /// <param name="background">For each slot a price for each of its candidates here; null for none.</param>
    /// <exception cref="TimeoutException">The solver came to no end within its time.</exception>
    public static (int[] Choice, long Price)? Cheapest(
        IChoicePrices prices, Counters counters, int[][] candidates, long[][]? background = null)
    {
        var chain = new ExactChain(prices, candidates);
        chain.AddCandidates(background);
        chain.AddNeighbours();
        counters.AddTo(chain._model, chain._chosen);
        return chain.Solved();
    }

    private void AddCandidates(long[][]? background)
    {
        for (var slot = 0; slot < _chosen.Length; slot++)
        {
            _model.AddExactlyOne(_chosen[slot].Select(c => c.IsChosen));
            var alone = _prices.Alone(slot);
            for (var place = 0; place < _chosen[slot].Length; place++)
            {
                var (candidate, isChosen) = _chosen[slot][place];
                _price.AddTerm(isChosen, alone[candidate] + (background?[slot][place] ?? 0));
            }
        }
    }

    private void AddNeighbours()
    {
        for (var slot = 1; slot < _chosen.Length; slot++)
        {
            if (_prices.Linked(slot).Contains(slot - 1))
            {
                AddArcs(slot);
            }
        }
    }

    // An arc for each pair of candidates of a slot and the one before it; what flows through a candidate flows along one
    // of its arcs, on either side.
    private void AddArcs(int slot)
    {
        int[] before = [.. _chosen[slot - 1].Select(c => c.Candidate)];
        var intoFrom = before.Select(_ => LinearExpr.NewBuilder()).ToArray();
        var pairs = new long[before.Length];
        foreach (var (candidate, isChosen) in _chosen[slot])
        {
            _prices.PairPrices(slot, candidate, slot - 1, before, pairs);
            var into = LinearExpr.NewBuilder();
            for (var place = 0; place < before.Length; place++)
            {
                var arc = _model.NewBoolVar("");
                _price.AddTerm(arc, pairs[place]);
                into.Add(arc);
                intoFrom[place].Add(arc);
            }

            _model.Add(into == isChosen);
        }

        for (var place = 0; place < before.Length; place++)
        {
            _model.Add(intoFrom[place] == _chosen[slot - 1][place].IsChosen);
        }
    }

    private (int[] Choice, long Price)? Solved()
    {
        _model.Minimize(_price);
        var solver = new CpSolver
        {
            StringParameters = Settings + LongestDeterministicTime.ToString(CultureInfo.InvariantCulture),
        };
        return solver.Solve(_model) switch
        {
            CpSolverStatus.Optimal => (
                [.. _chosen.Select(slot => slot.First(c => solver.BooleanValue(c.IsChosen)).Candidate)],
                solver.Value(_price)),
            CpSolverStatus.Infeasible => null,
            var status => throw new TimeoutException($"no proven optimum in {LongestDeterministicTime} units of the solver's time: {status}"),
        };
    }
}
