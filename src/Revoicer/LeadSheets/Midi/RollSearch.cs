using Revoicer.Values;

namespace Revoicer.LeadSheets.Midi;

/// <summary>
/// Finds rolls: strokes that follow each other up or down without ending, and lead into a place of the grid. What goes by
/// steps of the scale, or ends before the next begins, is a run.
/// </summary>
/// <param name="onsets">The onsets in order of time.</param>
/// <param name="times">When ticks are heard.</param>
internal sealed class RollSearch(IReadOnlyList<Onset> onsets, TickTimes times)
{
    // Drafts roll in steps of 0.04 to 0.09 s, and a tune asks for slower notes. Estimates, as is the least mean interval.
    private static readonly Seconds LongestStep = new(0.1);
    private const int LeastMeanInterval = 3;

    // As many bells as may be struck at once (at_once_s and bells_at_once of the playing limits), and the tune's.
    private const int MostStrokes = 7;

    private readonly Seconds[] _at = [.. onsets.Select(o => times.At(o.Tick))];

    /// <summary>For each onset the onset that ends its roll; itself where it belongs to none.</summary>
    /// <param name="isOnGrid">Whether each onset lies on the grid.</param>
    public int[] Ends(IReadOnlyList<bool> isOnGrid)
    {
        var ends = Enumerable.Range(0, onsets.Count).ToArray();
        for (var last = onsets.Count - 1; last > 0; last--)
        {
            var first = isOnGrid[last] ? Math.Min(First(last, isOnGrid, 1), First(last, isOnGrid, -1)) : last;
            for (var i = first; i < last; i++)
            {
                ends[i] = last;
            }

            last = first;
        }

        return ends;
    }

    // The first onset of the roll that ends with one; that one itself where there is none.
    private int First(int last, IReadOnlyList<bool> isOnGrid, int direction)
    {
        var first = last;
        var bound = direction > 0 ? onsets[last].Highest : onsets[last].Lowest;
        var (end, strokes) = (bound, 1);
        while (first > 0 && Leads(first - 1, first, last, bound, direction))
        {
            first--;
            strokes += onsets[first].Count;
            bound = direction > 0 ? onsets[first].Lowest : onsets[first].Highest;
        }

        // What stands on the grid before the roll is no part of it.
        while (first < last && isOnGrid[first])
        {
            strokes -= onsets[first].Count;
            first++;
        }

        var span = first == last ? 0 : (end - (direction > 0 ? onsets[first].Lowest : onsets[first].Highest)) * direction;
        return strokes is > 1 and <= MostStrokes && span >= LeastMeanInterval * (strokes - 1) ? first : last;
    }

    private bool Leads(int from, int to, int last, int bound, int direction) =>
        _at[to] - _at[from] < LongestStep
        && onsets[from].Ends > onsets[last].Tick
        && (direction > 0 ? onsets[from].Highest < bound : onsets[from].Lowest > bound);
}
