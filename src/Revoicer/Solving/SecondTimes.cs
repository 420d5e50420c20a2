using Revoicer.Music;
using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving;

/// <summary>
/// Repeats that are not played alike: the first time is that of an answer in which they were; of every passage that is heard
/// again at least one chord strikes other bells.
/// </summary>
public static class SecondTimes
{
    /// <summary>The rules, besides all others, under which the slots of a sheet with its passes apart are searched.</summary>
    /// <param name="alike">The priced slots of the sheet with what is repeated voiced once.</param>
    /// <param name="found">An answer to those.</param>
    /// <param name="apart">The slots of the same sheet at the same speeds with its passes apart.</param>
    /// <returns>The rules; none where nothing is heard twice.</returns>
    public static Items<Rule> Rules(SheetPrices alike, Outcome.Found found, SlotPlan apart)
    {
        var answer = alike.Plan.InTime().ToDictionary(h => h.Hearing.Order, h => alike.Candidates(h.Slot.Index)[found.Choice[h.Slot.Index]]);
        var first = apart.Slots.Where(s => s.Hearings[0].Pass == 1).ToArray();
        var passages = Passages(apart, first.Select(PlaceOf).ToHashSet());
        if (passages.Count == 0)
        {
            return [];
        }

        var held = first.ToDictionary(s => s.Index, s => answer[s.Hearings[0].Order].Strokes);
        var bells = first.DistinctBy(PlaceOf).ToDictionary(PlaceOf, s => answer[s.Hearings[0].Order].ChordNotes);
        return passages
            .Select(passage => (Rule)new OtherBells(
                Words(passage),
                passage.ToDictionary(s => s.Index, s => bells[PlaceOf(s)]),
                least: 1))
            .Prepend(new AsBefore("what is heard for the first time is as in the draft with repeats alike", held))
            .ToItems();
    }

    private static (int Bar, Beats InBar) PlaceOf(Slot slot) => (slot.Bar, slot.InBar);

    // What is heard again in one go: slots one after another of the same pass.
    private static List<List<Slot>> Passages(SlotPlan apart, HashSet<(int Bar, Beats InBar)> first)
    {
        var passages = new List<List<Slot>> { new() };
        var pass = 1;
        foreach (var (slot, hearing) in apart.InTime())
        {
            if (hearing.Pass != pass)
            {
                passages.Add([]);
                pass = hearing.Pass;
            }

            if (pass > 1 && first.Contains(PlaceOf(slot)))
            {
                passages[^1].Add(slot);
            }
        }

        return [.. passages.Where(p => p.Count > 0)];
    }

    private static string Words(List<Slot> passage)
    {
        var (from, to, pass) = (passage[0].Bar, passage[^1].Bar, passage[0].Hearings[0].Pass);
        var bars = from == to ? $"bar {from}" : $"bars {from} to {to}";
        var time = pass == 2 ? "the second time" : $"the time {pass}";
        return $"in {bars}, {time}, at least one chord strikes other bells than the first time";
    }
}
