using Revoicer.Music;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>
/// What it costs that a candidate of one slot leaves tones to the slot before it which the candidate there does not strike in the
/// hands: as much as if they were left out. What that candidate itself leaves to the slot before it counts as not struck.
/// </summary>
internal sealed class RingingOn
{
    private readonly Direction? _ahead;
    private readonly Direction? _back;

    private RingingOn(Direction? ahead, Direction? back) => (_ahead, _back) = (ahead, back);

    /// <summary>Between two slots; null where neither leaves anything to the other.</summary>
    /// <param name="earlier">One slot.</param>
    /// <param name="later">The other.</param>
    /// <param name="forward">How often the other follows the one.</param>
    /// <param name="backward">How often the one follows the other.</param>
    public static RingingOn? Between(PricedSlot earlier, PricedSlot later, int forward, int backward)
    {
        var ahead = Direction.Of(earlier, later, forward);
        var back = Direction.Of(later, earlier, backward);
        return ahead is null && back is null ? null : new RingingOn(ahead, back);
    }

    /// <summary>The price of two candidates.</summary>
    public int Price(in Outline earlier, in Outline later) =>
        (_ahead?.Price(earlier, later) ?? 0) + (_back?.Price(later, earlier) ?? 0);

    // From a slot to one that follows it: a small table by the shared tones struck before and by what is left to them.
    private sealed class Direction
    {
        private readonly int[] _rowOfUpper;
        private readonly int[] _prices;

        private Direction(PricedSlot before, PricedSlot after, int times)
        {
            PitchClassSet[] struck = [.. before.Uppers.Select(upper => PitchClassSet.Of(upper.Select(PitchClass.Of)).Common(after.Slot.Shared))];
            PitchClassSet[] rows = [.. struck.Distinct()];
            _rowOfUpper = [.. struck.Select(s => Array.IndexOf(rows, s) * after.Lefts.Count)];
            _prices = [.. rows.SelectMany(_ => after.Lefts, (row, left) => times * after.NotRinging(left, row))];
        }

        public static Direction? Of(PricedSlot before, PricedSlot after, int times) =>
            times > 0 && after.Slot.Shared.Count > 0 ? new Direction(before, after, times) : null;

        public int Price(in Outline before, in Outline after) => _prices[_rowOfUpper[before.Upper] + after.Left];
    }
}
