using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Windows;

/// <summary>
/// The search of a long piece, window by window. Under a deadline a first answer is made of few candidates a slot, which takes a
/// small part of the time; then windows are solved anew with all candidates as long as there is time, and the others stay as they were.
/// </summary>
/// <param name="plan">The slots.</param>
/// <param name="pricing">Prices them.</param>
/// <param name="list">Lists the candidates of a slot.</param>
/// <param name="rules">What every arrangement keeps; none that asks for a least over several windows.</param>
/// <param name="effort">What each window may spend on its proof, and the deadline.</param>
/// <param name="stop">Stops what has to be done before there is an answer.</param>
/// <param name="cancel">Stops the work.</param>
internal sealed class WindowSearch(
    SlotPlan plan, SlotPricing pricing, Func<Slot, Items<Candidate>> list, IReadOnlyList<Rule> rules, ProofEffort effort, CancellationToken stop, CancellationToken cancel)
{
    /// <summary>As <see cref="LongSearch.Best"/>.</summary>
    /// <param name="most">Dearer than this is not wanted.</param>
    public (SheetPrices Prices, Outcome Outcome)? Best(long most) => effort.Deadline.IsNone ? Among(effort, most) : BestInTime(most);

    /// <summary>Where every choice costs more than that: what it costs at the least, as far as that was seen.</summary>
    public long Least { get; private set; }

    /// <summary>Whether all windows together keep the rules and leave time for every move, which only shows in the whole.</summary>
    public bool CanBePlayed((SheetPrices Prices, Outcome Outcome) best) =>
        best.Outcome is not Outcome.Found found || (best.Prices.CanBeMoved(found.Choice) && RuleBook.For(rules, best.Prices).Counters.AreKept(found.Choice));

    private (SheetPrices Prices, Outcome Outcome)? BestInTime(long most)
    {
        var few = Long(ProofEffort.Unproven with { Deadline = effort.Deadline }, new FewCandidates(pricing, list, rules));
        if (few.Best(long.MaxValue) is not { Outcome: Outcome.Found found } first || !CanBePlayed(first))
        {
            return Among(effort, most);
        }

        var best = Among(effort, most, few.Windows);
        return best is { Outcome: Outcome.Found better } && (better.Price > found.Price || !CanBePlayed(best.Value))
            ? (first.Prices, found with { Bound = Math.Min(found.Price, better.Bound), WasCutShort = true })
            : best;
    }

    // Among all candidates.
    private (SheetPrices Prices, Outcome Outcome)? Among(ProofEffort spent, long most, IReadOnlyList<PieceWindow>? instead = null)
    {
        var search = Long(spent, instead: instead);
        var best = search.Best(most);
        Least = search.Least;
        return best;
    }

    private LongSearch Long(ProofEffort spent, FewCandidates? few = null, IReadOnlyList<PieceWindow>? instead = null) =>
        new(plan, pricing, list, rules, spent, stop, cancel) { Few = few, Instead = instead };
}
