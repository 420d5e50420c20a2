using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Arrangements;

/// <summary>
/// Every chord as it could be taken without thought: the root in the lowest octave of the pedals, third and fifth where they
/// lie nearest to middle C, all struck together. Nobody asks whether hands and feet could play it.
/// </summary>
internal static class PlainHand
{
    private const int MiddleC = 60;

    /// <summary>A chord so taken; null where the tower has no bell at all for one of its tones.</summary>
    public static Candidate? Of(ChordSymbol symbol, Tower tower)
    {
        var bells = tower.Bells.Select(b => b.Note).ToLookup(n => n.PitchClass);
        var tones = symbol.Tones.Where(t => t.Degree.Number <= 5).ToArray();
        if (!tones.All(t => bells.Contains(t.PitchClass)))
        {
            return null;
        }

        var notes = tones
            .Select(t => t.Role == ToneRole.Root ? bells[t.PitchClass].First() : bells[t.PitchClass].MinBy(n => Math.Abs(n.Midi - MiddleC)))
            .Distinct()
            .Order()
            .ToArray();
        var root = bells[symbol.Root.PitchClass].First();
        var bass = notes[0] == root && tower.HasPedal(root) ? root : (WrittenNote?)null;
        var upper = notes.Skip(bass is null ? 0 : 1).Select((n, i) => new Baton(n, i == 0 ? Limb.LeftHand : Limb.RightHand)).ToItems();
        var feet = bass is { } pedal ? [new SlotStroke(pedal, Limb.LeftFoot, Beats.Zero, 0)] : Items<SlotStroke>.None;
        return new Candidate(
            Figure.Together,
            new Voicing(bass, null, upper),
            feet.Concat(upper.Select(b => new SlotStroke(b.Note, b.Limb, Beats.Zero, 0))).ToItems());
    }

    /// <summary>A whole sheet so taken, beside an arrangement of it; null where the tower has no bell at all for a tone.</summary>
    /// <param name="beside">The arrangement, whose tempi are taken.</param>
    /// <param name="sheet">The sheet.</param>
    /// <param name="sound">The sound.</param>
    /// <param name="prices">The arrangement's slots.</param>
    public static Arrangement? Of(Arrangement beside, LeadSheet sheet, Sound sound, SheetPrices prices)
    {
        var taken = prices.Plan.Slots.Select(slot => Of(slot.Symbol, prices.Instrument.Tower)).OfType<Candidate>().ToArray();
        if (taken.Length < prices.Plan.Slots.Count)
        {
            return null;
        }

        var alone = SheetPrices.Of(prices.Instrument, sound, prices.Plan, [.. taken.Select(c => Items.Of([c]))], CancellationToken.None);
        var choice = taken.Select(_ => 0).ToItems();
        var price = alone.Whole(choice);
        var found = new Outcome.Found(choice, price, price, 0, taken.Select(_ => new SlotOutcome([], null)).ToItems(), []);
        return ArrangementMaking.Of(sheet, beside.Tempi, beside.TempoIsAssumed, sound, alone, found);
    }
}
