using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>The notes under the tune that music has which is voiced anew.</summary>
/// <param name="Notes">In order of time, then upward; none of them one of the tune.</param>
/// <param name="Closeness">How close the new voicing is to stay, 0 (not at all) to 1.</param>
public sealed record OriginalChord(Items<SlotTuneNote> Notes, double Closeness)
{
    private const double Elsewhere = 0.5;

    /// <summary>
    /// How far a candidate is from it: 1 for a bell that only one of the two has, 1/2 for one that the other has in another
    /// octave, and 1/2 for each stroke on a bell of both that stands in another place of the slot, or that only one has.
    /// 0 where the same bells are struck in the same places.
    /// </summary>
    public double DistanceTo(Candidate candidate)
    {
        var old = Notes.Select(n => (n.Note, n.After)).ToHashSet();
        var now = candidate.Strokes.Select(s => (s.Note, s.After)).ToHashSet();
        if (old.SetEquals(now))
        {
            return 0;
        }

        WrittenNote[] before = [.. old.Select(n => n.Note).Distinct()], after = [.. now.Select(n => n.Note).Distinct()];
        var moved = before.Intersect(after).Sum(note => Math.Max(Without(old, now, note), Without(now, old, note)));
        WrittenNote[] lost = [.. before.Except(after)], added = [.. after.Except(before)];
        var octaves = lost.Select(n => n.PitchClass).Distinct().Sum(tone => Math.Min(Of(lost, tone), Of(added, tone)));
        return (moved * Elsewhere) + lost.Length + added.Length - (octaves * (2 - Elsewhere));

        static int Of(WrittenNote[] notes, PitchClass tone) => notes.Count(n => n.PitchClass == tone);

        static int Without(HashSet<(WrittenNote Note, Beats)> strokes, HashSet<(WrittenNote, Beats)> others, WrittenNote note) =>
            strokes.Count(s => s.Note == note && !others.Contains(s));
    }
}
