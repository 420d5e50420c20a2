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
    private const int MiddleC = 60;

    /// <summary>The clash dose if every chord stood in close root position; the tune with itself left out.</summary>
    public static double CloseRoot(SheetPrices prices, TempoMap tempi, Sound sound) =>
        Dose(prices, tempi, sound, symbol => ClosePosition.Of(symbol, prices.Instrument.Tower)).Dose;

    /// <summary>
    /// The same, and how many strokes it takes, with a plain hand: the root in the lowest octave of the pedals, third and
    /// fifth where they lie nearest to middle C.
    /// </summary>
    public static (double Dose, int Strokes) PlainHand(SheetPrices prices, TempoMap tempi, Sound sound) =>
        Dose(prices, tempi, sound, symbol => PlainHandOf(symbol, prices.Instrument));

    // None where the tower has no bell at all for one of them.
    private static IReadOnlyList<WrittenNote> PlainHandOf(ChordSymbol symbol, Instrument instrument)
    {
        var bells = instrument.Tower.Bells.Select(b => b.Note).ToLookup(n => n.PitchClass);
        var tones = symbol.Tones.Where(t => t.Degree.Number <= 5).ToArray();
        return tones.All(t => bells.Contains(t.PitchClass))
            ? [.. tones.Select(t => t.Role == ToneRole.Root ? bells[t.PitchClass].First() : bells[t.PitchClass].MinBy(n => Math.Abs(n.Midi - MiddleC)))]
            : [];
    }

    private static (double Dose, int Strokes) Dose(
        SheetPrices prices, TempoMap tempi, Sound sound, Func<ChordSymbol, IReadOnlyList<WrittenNote>> notes)
    {
        var plan = prices.Plan;
        var chosen = plan.Slots.Select(slot => Together(notes(slot.Symbol).Distinct().Order())).ToArray();
        if (chosen.Any(c => c.Strokes.Count == 0))
        {
            return (0, 0);
        }

        var strokes = StrokesInTime.Of(plan, chosen, tempi, sound, prices.Instrument);
        var clash = new ClashInTime(prices.Instrument, strokes.InChords(plan, prices.Instrument.Tower.Transposition), strokes.Tune);
        return (Enumerable.Range(0, strokes.OfHearing.Count).Sum(clash.DoseOf), strokes.OfHearing.Sum(h => h.Count));
    }

    private static Candidate Together(IEnumerable<WrittenNote> notes)
    {
        var strokes = notes.Select(n => new SlotStroke(n, Limb.LeftHand, Beats.Zero, 0)).ToItems();
        return new Candidate(Figure.Together, new Voicing(null, null, strokes.Select(s => new Baton(s.Note, s.Limb)).ToItems()), strokes);
    }
}
