using Revoicer.Music;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>
/// Cuts the bars of a passage where a chord could begin: at bar lines, and where a note begins on a beat or a part of one.
/// Notes count for as long as they are written: bells ring longer, but what is meant is on paper.
/// </summary>
internal static class Moments
{
    /// <summary>The moments of the first bars, in order.</summary>
    /// <param name="passage">The passage.</param>
    /// <param name="bars">How many bars are looked at.</param>
    /// <param name="until">Where in the last of them they end.</param>
    public static List<Moment> Of(Passage passage, int bars, Beats until)
    {
        var moments = new List<Moment>();
        for (var i = 0; i < bars; i++)
        {
            var bar = passage.Sheet.Bars[i];
            moments.AddRange(OfBar(i, bar, i + 1 == bars ? until : bar.Length, [.. passage.Voices.SelectMany(v => v.Bars[i])]));
        }

        return moments;
    }

    private static IEnumerable<Moment> OfBar(int index, WrittenBar bar, Beats end, TuneNote[] notes)
    {
        Beats[] places = [.. notes.Select(n => n.Start).Where(at => MetricGrid.IsOnPart(bar, at)).Append(Beats.Zero).Where(at => at < end).Distinct().Order()];
        var sounding = places.Select(_ => new List<TuneNote>()).ToArray();
        foreach (var note in notes)
        {
            var k = Array.BinarySearch(places, note.Start);
            for (k = k < 0 ? ~k - 1 : k; k < places.Length && places[k] < note.Start + note.Length; k++)
            {
                if (k + 1 < places.Length || note.Start < end)
                {
                    sounding[k].Add(note);
                }
            }
        }

        return places.Select((place, k) => new Moment(index, bar, place, k + 1 < places.Length ? places[k + 1] : end, sounding[k]));
    }
}
