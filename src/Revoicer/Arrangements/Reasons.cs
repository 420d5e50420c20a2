using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Arrangements;

/// <summary>Why a slot is voiced as it is: what the choice costs, what came next and where that lost. Prices are over all hearings of the slot.</summary>
internal sealed class Reasons
{
    private static readonly Term[] AllTerms = Enum.GetValues<Term>();

    public Reasons(SheetPrices prices, Outcome.Found found, Slot slot)
    {
        var chosen = prices.WithOthers(found.Choice, slot.Index, found.Choice[slot.Index]);
        Terms = AllTerms.Where(t => chosen[t] != 0).Select(t => new PricedTerm(TermNames.Of(t), chosen[t])).ToItems();
        BoundBy = found.Slots[slot.Index].BoundBy;
        if (found.Slots[slot.Index].RunnerUp is { } number)
        {
            var other = prices.WithOthers(found.Choice, slot.Index, number);
            var candidate = prices.Candidates(slot.Index)[number];
            RunnerUp = new RunnerUp(
                FigureNames.Of(candidate.Figure),
                candidate.Notes,
                other.Sum() - chosen.Sum(),
                AllTerms.Where(t => other[t] != chosen[t])
                    .Select(t => new PricedTerm(TermNames.Of(t), other[t] - chosen[t]))
                    .OrderByDescending(t => t.Thousandths)
                    .ToItems());
        }
    }

    public Items<PricedTerm> Terms { get; }

    public RunnerUp? RunnerUp { get; }

    public string? BoundBy { get; }
}
