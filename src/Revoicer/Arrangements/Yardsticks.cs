using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Arrangements;

/// <summary>
/// Two ways in which every chord could be taken without thought, to hold an arrangement against: the same slots, the same
/// tune, all struck together. Neither asks whether hands and feet could play it. Where the tower lacks a bell that one of
/// them needs, there is nothing to hold an arrangement against, and the figure is 0.
/// </summary>
internal static class Yardsticks
{
    /// <summary>The clash dose if every chord stood in close root position, the tune with itself left out, and how many strokes that takes.</summary>
    public static (double Dose, int Strokes) OfCloseRoot(SheetPrices prices, TempoMap tempi, Sound sound) =>
        Dose(prices, tempi, sound, symbol => Together(ClosePosition.Of(symbol, prices.Instrument.Tower).Distinct().Order()));

    /// <summary>
    /// The same, and how many strokes it takes, with a plain hand: the root in the lowest octave of the pedals, third and
    /// fifth where they lie nearest to middle C.
    /// </summary>
    public static (double Dose, int Strokes) OfPlainHand(SheetPrices prices, TempoMap tempi, Sound sound) =>
        Dose(prices, tempi, sound, symbol => PlainHand.Of(symbol, prices.Instrument.Tower));

    private static (double Dose, int Strokes) Dose(
        SheetPrices prices, TempoMap tempi, Sound sound, Func<ChordSymbol, Candidate?> taken)
    {
        var plan = prices.Plan;
        var chosen = plan.Slots.Select(slot => taken(slot.Symbol)).OfType<Candidate>().ToArray();
        if (chosen.Length < plan.Slots.Count)
        {
            return (0, 0);
        }

        var strokes = StrokesInTime.Of(plan, chosen, tempi, sound, prices.Instrument);
        var clash = new ClashInTime(prices.Instrument, strokes.InChords(plan, prices.Instrument.Tower.Transposition), strokes.Tune);
        return (Enumerable.Range(0, strokes.OfHearing.Count).Sum(clash.DoseOf), strokes.OfHearing.Sum(h => h.Count));
    }

    private static Candidate? Together(IEnumerable<WrittenNote> notes)
    {
        var strokes = notes.Select(n => new SlotStroke(n, Limb.LeftHand, Beats.Zero, 0)).ToItems();
        return strokes.Count == 0 ? null : new Candidate(Figure.Together, new Voicing(null, null, strokes.Select(s => new Baton(s.Note, s.Limb)).ToItems()), strokes);
    }
}
