using Revoicer.Prices;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>Strokes of the tune that lie more than 6 dB under what the accompaniment strikes with them or in the quarter of a second after.</summary>
/// <param name="Count">How many, as heard.</param>
/// <param name="Under">By how much the softest lies under it, in dB(A) at the listener; 0 where there is none.</param>
/// <param name="At">When that one is struck; 0 where there is none.</param>
public sealed record SoftTune(int Count, Decibels Under, Seconds At)
{
    /// <summary>The tune is heard throughout.</summary>
    public static SoftTune None { get; } = new(0, Decibels.Zero, Seconds.Zero);

    /// <summary>Those of a choice.</summary>
    /// <param name="prices">The priced slots.</param>
    /// <param name="choice">For each slot the number of a candidate.</param>
    /// <param name="shift">By how much the piece begins later for a first roll.</param>
    public static SoftTune Of(SheetPrices prices, IReadOnlyList<int> choice, Seconds shift)
    {
        var soft = prices.Plan.InTime()
            .SelectMany(h => prices.TuneLevels(h.Slot.Index, choice[h.Slot.Index]), (h, level) => (level.Under, At: h.Hearing.At + level.After + shift))
            .Where(s => s.Under.Value > SheetPrices.TuneFloor.Value)
            .ToArray();
        return soft.Length == 0 ? None : new SoftTune(soft.Length, soft.MaxBy(s => s.Under.Value).Under, soft.MaxBy(s => s.Under.Value).At);
    }
}
