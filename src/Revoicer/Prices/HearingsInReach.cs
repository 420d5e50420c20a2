using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>Which slots are heard so near to each other that there may be something between them.</summary>
internal static class HearingsInReach
{
    /// <summary>
    /// For each slot the later ones of which a hearing is so near to one of its own that there may be something between them:
    /// within a reach, or next to each other.
    /// </summary>
    /// <param name="slots">The slots, numbered from 0 in the order in which they are first heard.</param>
    /// <param name="reach">From the beginning of one hearing to that of the other, in microseconds.</param>
    public static SortedSet<int>[] Later(IReadOnlyList<Slot> slots, long reach)
    {
        var heard = slots
            .SelectMany(s => s.Hearings, (s, hearing) => (s.Index, hearing))
            .Select(h => (h.Index, h.hearing.Order, At: StrokeKinds.Microseconds(h.hearing.At)))
            .OrderBy(h => h.Order)
            .ToArray();
        SortedSet<int>[] later = [.. slots.Select(_ => new SortedSet<int>())];
        for (var a = 0; a < heard.Length; a++)
        {
            for (var b = a + 1; b < heard.Length && (b == a + 1 || heard[b].At - heard[a].At <= reach); b++)
            {
                if (heard[a].Index != heard[b].Index)
                {
                    later[Math.Min(heard[a].Index, heard[b].Index)].Add(Math.Max(heard[a].Index, heard[b].Index));
                }
            }
        }

        return later;
    }
}
