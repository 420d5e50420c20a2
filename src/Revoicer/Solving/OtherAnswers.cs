using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving;

/// <summary>
/// Other answers to the same question: each strikes other bells than every one before it in at least a quarter of the
/// written chords.
/// </summary>
public static class OtherAnswers
{
    // A quarter, an estimate: fewer would hardly be heard as another arrangement, more would drive the price up.
    private const int OneIn = 4;

    /// <summary>In how many of some written chords an answer differs at least from each before it.</summary>
    public static int LeastOf(int slots) => Math.Max(1, (slots + OneIn - 1) / OneIn);

    /// <summary>The rules, besides all others, under which the next answer is searched.</summary>
    /// <param name="prices">The priced slots.</param>
    /// <param name="before">The answers before it, the first one first.</param>
    public static Items<Rule> Rules(SheetPrices prices, IReadOnlyList<Outcome.Found> before)
    {
        var slots = prices.Plan.Slots;
        var least = LeastOf(slots.Count);
        return before
            .Select((found, number) => (Rule)new OtherBells(
                $"at least {least} of {slots.Count} chords strike other bells than in {(number == 0 ? "the first answer" : $"other answer {number}")}",
                slots.ToDictionary(s => s.Index, s => BellsOf(prices, found, s)),
                least))
            .ToItems();
    }

    /// <summary>In how many written chords two answers strike other bells.</summary>
    public static int Differing(SheetPrices prices, Outcome.Found a, Outcome.Found b) =>
        prices.Plan.Slots.Count(s => BellsOf(prices, a, s) != BellsOf(prices, b, s));

    private static Items<Music.WrittenNote> BellsOf(SheetPrices prices, Outcome.Found found, Slot slot) =>
        prices.Candidates(slot.Index)[found.Choice[slot.Index]].ChordNotes;
}
