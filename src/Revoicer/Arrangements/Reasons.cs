using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Arrangements;

/// <summary>Why a slot is voiced as it is: what the choice costs, and what else could be played. Prices are over all hearings of the slot.</summary>
internal sealed class Reasons
{
    private static readonly Term[] AllTerms = Enum.GetValues<Term>();

    public Reasons(SheetPrices prices, Outcome.Found found, Slot slot)
    {
        var chosen = prices.WithOthers(found.Choice, slot.Index, found.Choice[slot.Index]);
        Terms = AllTerms.Where(t => chosen[t] != 0).Select(t => new PricedTerm(TermNames.Of(t), chosen[t])).ToItems();
        Alternatives = found.Slots[slot.Index].Alternatives.Select(Other).ToItems();
        if (found.Slots[slot.Index].Barred is { } barred)
        {
            var other = Other(barred.Candidate);
            Barred = new BarredVoicing(other.Figure, other.Notes, -other.CostsMore, barred.Rule);
        }

        if (slot.Original is { } original)
        {
            Former = FormerOf(prices, found, slot, original, chosen);
        }

        Alternative Other(int number)
        {
            var other = prices.WithOthers(found.Choice, slot.Index, number);
            var candidate = prices.Candidates(slot.Index)[number];
            return new Alternative(FigureNames.Of(candidate.Figure), candidate.Notes, other.Sum() - chosen.Sum(), Differences(other, chosen));
        }
    }

    public Items<PricedTerm> Terms { get; }

    public Items<Alternative> Alternatives { get; }

    public BarredVoicing? Barred { get; }

    public FormerChord? Former { get; }

    // The cheapest way to play what was there. Where there is none, or a limb has no time from or to the chords around it,
    // no price is told but what stands in the way.
    private static FormerChord FormerOf(SheetPrices prices, Outcome.Found found, Slot slot, OriginalChord original, TermPrices chosen)
    {
        var candidates = prices.Candidates(slot.Index);
        var ways = Enumerable.Range(0, candidates.Count)
            .Where(c => original.DistanceTo(candidates[c]) == 0)
            .Select(c => prices.WithOthers(found.Choice, slot.Index, c))
            .ToArray();
        var notes = original.Notes.Select(n => n.Note).Distinct().Order().ToItems();
        var isKept = original.DistanceTo(candidates[found.Choice[slot.Index]]) == 0;
        if (isKept)
        {
            return new FormerChord(notes, true, 0, []);
        }

        if (ways.Length == 0)
        {
            return Barred(Obstacle.Of(prices.Instrument.Tower, prices.Instrument.Reach, slot, original));
        }

        var way = ways.MinBy(w => w.Sum());
        return way[Term.Moves] >= Thousandths.Forbidden
            ? Barred(new Obstacle(ObstacleKind.NoTime, []))
            : new FormerChord(notes, false, way.Sum() - chosen.Sum(), Differences(way, chosen));

        FormerChord Barred(Obstacle obstacle) => new(notes, false, null, []) { Obstacle = obstacle };
    }

    private static Items<PricedTerm> Differences(TermPrices of, TermPrices from) => AllTerms
        .Where(t => of[t] != from[t])
        .Select(t => new PricedTerm(TermNames.Of(t), of[t] - from[t]))
        .OrderByDescending(t => t.Thousandths)
        .ToItems();
}
