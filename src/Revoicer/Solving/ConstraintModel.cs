using System.Globalization;
using Google.OrTools.Sat;
using Revoicer.Prices;

namespace Revoicer.Solving;

/// <summary>The literal of a constraint model that says whether a candidate is chosen.</summary>
internal readonly record struct ChosenLiteral(int Candidate, BoolVar IsChosen)
{
    /// <summary>One for each candidate of each slot, named by their numbers, so that an exported model can be read.</summary>
    public static ChosenLiteral[][] Of(CpModel model, int[][] candidates) =>
        [.. candidates.Select((list, slot) => list.Select(c => new ChosenLiteral(c, model.NewBoolVar($"slot {slot} candidate {c}"))).ToArray())];
}

/// <summary>
/// The whole problem stated to a constraint solver: one candidate for each slot, an arc for each pair of candidates of two
/// linked slots, of which as many are chosen as their ends say, and prices on both. It is slow, shares nothing with the other
/// ways of solving but the rules, and takes any further rule that can be stated as a constraint.
/// </summary>
internal sealed class ConstraintModel
{
    // One worker and a fixed seed give the same answer on every run; with the linear relaxation at its strongest and
    // without presolve the flow form was solved quickest of the settings tried (64 slots of 20 and of 60 candidates).
    public const string BestSettings = "num_workers:1,random_seed:1,linearization_level:2,cp_model_presolve:false";

    private readonly CpModel _model = new();
    private readonly LinearExprBuilder _price = LinearExpr.NewBuilder();
    private readonly IChoicePrices _prices;
    private readonly ChosenLiteral[][] _chosen;

    private ConstraintModel(IChoicePrices prices, int[][] candidates)
    {
        _prices = prices;
        _chosen = ChosenLiteral.Of(_model, candidates);
    }

    /// <summary>
    /// The cheapest choice that keeps the counts, and its price. Of equals it takes any.
    /// </summary>
    /// <param name="prices">The prices.</param>
    /// <param name="counters">The rules that count.</param>
    /// <param name="candidates">For each slot the candidates to choose from; at least one.</param>
    /// <param name="longest">How long the solver may take, in its own unit of work, very roughly a second.</param>
    /// <param name="cancel">Stops it.</param>
    /// <param name="settings">The solver's parameters, in its own text form.</param>
    /// <returns>No choice where none keeps the counts; not ended where the solver came to no end within its time.</returns>
    public static (bool Ended, int[]? Choice, long Price) Cheapest(
        IChoicePrices prices, Counters counters, int[][] candidates, double longest, CancellationToken cancel, string settings = BestSettings) =>
        Stated(prices, counters, candidates).Solved(longest, settings, cancel);

    /// <summary>The problem in the solver's own text form, whose variables are named by slots and candidates.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="counters">The rules that count.</param>
    /// <param name="candidates">For each slot the candidates to choose from; at least one.</param>
    public static string TextOf(IChoicePrices prices, Counters counters, int[][] candidates) => Stated(prices, counters, candidates)._model.Model.ToString();

    private static ConstraintModel Stated(IChoicePrices prices, Counters counters, int[][] candidates)
    {
        var model = new ConstraintModel(prices, candidates);
        model.AddCandidates();
        model.AddPairs();
        model._model.Minimize(model._price);
        counters.AddTo(model._model, model._chosen);
        return model;
    }

    private void AddCandidates()
    {
        for (var slot = 0; slot < _chosen.Length; slot++)
        {
            _model.AddExactlyOne(_chosen[slot].Select(c => c.IsChosen));
            var alone = _prices.Alone(slot);
            for (var place = 0; place < _chosen[slot].Length; place++)
            {
                var (candidate, isChosen) = _chosen[slot][place];
                _price.AddTerm(isChosen, alone[candidate]);
            }
        }
    }

    private void AddPairs()
    {
        for (var slot = 1; slot < _chosen.Length; slot++)
        {
            foreach (var other in _prices.Linked(slot).Where(o => o < slot))
            {
                AddArcs(slot, other);
            }
        }
    }

    // An arc for each pair of candidates of a slot and one before it; of the arcs of a chosen candidate one is chosen.
    private void AddArcs(int slot, int other)
    {
        int[] before = [.. _chosen[other].Select(c => c.Candidate)];
        var intoFrom = before.Select(_ => LinearExpr.NewBuilder()).ToArray();
        var pairs = new long[before.Length];
        foreach (var (candidate, isChosen) in _chosen[slot])
        {
            _prices.PairPrices(slot, candidate, other, before, pairs);
            var into = LinearExpr.NewBuilder();
            for (var place = 0; place < before.Length; place++)
            {
                var arc = _model.NewBoolVar($"slot {other} candidate {before[place]} with slot {slot} candidate {candidate}");
                _price.AddTerm(arc, pairs[place]);
                into.Add(arc);
                intoFrom[place].Add(arc);
            }

            _model.Add(into == isChosen);
        }

        for (var place = 0; place < before.Length; place++)
        {
            _model.Add(intoFrom[place] == _chosen[other][place].IsChosen);
        }
    }

    private (bool Ended, int[]? Choice, long Price) Solved(double longest, string settings, CancellationToken cancel)
    {
        var solver = new CpSolver
        {
            StringParameters = string.Create(CultureInfo.InvariantCulture, $"{settings},max_deterministic_time:{longest}"),
        };
        return Stoppable.Solve(solver, _model, cancel) switch
        {
            CpSolverStatus.Optimal => (
                true, [.. _chosen.Select(slot => slot.First(c => solver.BooleanValue(c.IsChosen)).Candidate)], solver.Value(_price)),
            CpSolverStatus.Infeasible => (true, null, 0),
            _ => (false, null, 0),
        };
    }
}
