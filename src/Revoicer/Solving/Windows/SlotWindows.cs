using Revoicer.Voicings;

namespace Revoicer.Solving.Windows;

/// <summary>Parts a long row of slots into windows of whole phrases.</summary>
internal static class SlotWindows
{
    /// <summary>
    /// More slots than this are searched in windows. Estimate: the demos have up to 36 and are proven whole; over 64 slots two
    /// windows leave a gap of 0.6 % where the tables of the whole, which grow too large, leave 2.9 %.
    /// </summary>
    public const int LongestWhole = 40;

    // A window has at least so many.
    private const int Shortest = 32;

    /// <summary>The windows, which together are all slots.</summary>
    /// <param name="slots">How many slots there are.</param>
    /// <param name="startsPhrase">Whether a phrase begins at a slot; not asked of the first.</param>
    public static IEnumerable<(int From, int Count)> Of(int slots, Func<int, bool> startsPhrase)
    {
        for (var from = 0; from < slots;)
        {
            var end = Math.Min(from + Shortest, slots);
            while (end < slots && !startsPhrase(end))
            {
                end++;
            }

            end = slots - end < Shortest / 2 ? slots : end;
            yield return (from, end - from);
            from = end;
        }
    }

    /// <summary>The phrases of some slots in a row, numbered from 0 as they come.</summary>
    public static Dictionary<int, int> Phrases(SlotPlan plan, int from, int count) =>
        plan.Slots.Skip(from).Take(count).Select(s => s.Phrase).Distinct().Select((phrase, number) => (phrase, number)).ToDictionary();
}
