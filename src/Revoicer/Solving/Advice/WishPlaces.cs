using System.Globalization;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Advice;

/// <summary>Finds wishes that speak of places where the sheet has no chord.</summary>
public static class WishPlaces
{
    /// <summary>The wishes and phrase starts that lead nowhere, each with what the sheet has instead; none where all have a place.</summary>
    /// <param name="wishes">The wishes.</param>
    /// <param name="sheet">The sheet.</param>
    /// <param name="plan">The sheet cut into slots.</param>
    public static Items<Problem> Astray(PlayerWishes wishes, LeadSheet sheet, SlotPlan plan)
    {
        var bars = sheet.Bars.Select(b => b.Number).ToHashSet();
        var phrases = wishes.Phrases.Where(p => !bars.Contains(p.Bar)).Select(p => NoBar(p.Where, p.Bar, bars));
        var astray = wishes.All
            .Where(w => !plan.Slots.Any(slot => w.At.Holds(slot.Bar, slot.BeatNumber)))
            .Select(w => Astray(w, bars, plan));
        return phrases.Concat(astray).Distinct().OrderBy(p => p.Where.Line).ThenBy(p => p.Where.Column).ToItems();
    }

    private static Problem Astray(Wish wish, HashSet<int> bars, SlotPlan plan)
    {
        var (from, to) = (wish.At.FromBar, wish.At.ToBar);
        if (!Enumerable.Range(from, to - from + 1).Any(bars.Contains))
        {
            return NoBar(wish.WhereBar, from, bars);
        }

        var beats = plan.Slots.Where(s => s.Bar == from).Select(s => s.BeatNumber).Distinct().Order().ToArray();
        if (from == to && beats.Length > 0)
        {
            var words = string.Join(", ", beats.Select(Beat));
            return new Problem(wish.WhereBeat, $"no chord begins at {wish.At.Words}", beats.Length == 1 ? $"beat {words}, the only one of bar {from} with a chord" : $"one of the beats of bar {from} with a chord: {words}");
        }

        var nearest = plan.Slots.Select(s => s.Bar).Distinct().OrderBy(bar => Math.Min(Math.Abs(bar - from), Math.Abs(bar - to))).ThenBy(bar => bar).First();
        return new Problem(wish.WhereBar, $"no chord begins in {wish.At.Words}", $"a bar in which one does; bar {nearest} is the nearest");
    }

    private static Problem NoBar(Place where, int bar, HashSet<int> bars) => new(
        where,
        $"the sheet has no bar {bar}",
        bars.Min() == bars.Max() ? $"bar {bars.Min()}, the only one" : $"a bar from {bars.Min()} to {bars.Max()}, as the report numbers them");

    private static string Beat(double beat) => beat.ToString("0.##", CultureInfo.InvariantCulture);
}
