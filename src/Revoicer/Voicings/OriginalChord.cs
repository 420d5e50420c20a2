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
    /// octave, or strikes at another place in the slot. 0 where the same bells are struck in the same places.
    /// </summary>
    public double DistanceTo(Candidate candidate)
    {
        var (old, now) = (First(Notes.Select(n => (n.Note, n.After))), First(candidate.Strokes.Select(s => (s.Note, s.After))));
        var moved = old.Count(n => now.TryGetValue(n.Key, out var after) && after != n.Value);
        WrittenNote[] lost = [.. old.Keys.Except(now.Keys)], added = [.. now.Keys.Except(old.Keys)];
        var octaves = lost.Select(n => n.PitchClass).Distinct().Sum(tone => Math.Min(Of(lost, tone), Of(added, tone)));
        return (moved * Elsewhere) + lost.Length + added.Length - (octaves * (2 - Elsewhere));

        static int Of(WrittenNote[] notes, PitchClass tone) => notes.Count(n => n.PitchClass == tone);
    }

    private static Dictionary<WrittenNote, Beats> First(IEnumerable<(WrittenNote Note, Beats After)> strokes)
    {
        var first = new Dictionary<WrittenNote, Beats>();
        foreach (var (note, after) in strokes)
        {
            first.TryAdd(note, after);
        }

        return first;
    }
}
