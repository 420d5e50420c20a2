using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>The notes under the tune that music has which is voiced anew.</summary>
/// <param name="Notes">In order of time, then upward; none of them one of the tune.</param>
/// <param name="Closeness">How close the new voicing is to stay, 0 (not at all) to 1.</param>
public sealed record OriginalChord(Items<SlotTuneNote> Notes, double Closeness)
{
    /// <summary>From so many voices on there is one between the tune and the bass.</summary>
    public const int WithInnerVoice = 3;

    private const double Elsewhere = 0.5;

    /// <summary>How many voices sound together in it at most, the tune counted.</summary>
    public int Voices { get; init; }

    /// <summary>Those of the notes that are written for the feet.</summary>
    public Items<SlotTuneNote> ForFeet { get; init; } = [];

    /// <summary>
    /// How many of its voices a candidate has not: the bass, on the tone that the symbol has lowest, and in a slot of 0.8 s and more the voice
    /// between bass and tune, if there was one. None where nothing was struck in the slot, and none in what was there itself.
    /// </summary>
    /// <param name="slot">The slot.</param>
    /// <param name="candidate">The candidate.</param>
    public int Wanting(Slot slot, Candidate candidate) => Notes.Count == 0 || slot.HasTuneBelow || candidate.Figure == Figure.AsItWas
        ? 0
        : (candidate.Voicing.Bass?.PitchClass == slot.Symbol.Lowest.PitchClass ? 0 : 1) + (AsksInner(slot) && !HasInner(candidate) ? 1 : 0);

    private bool AsksInner(Slot slot) => !slot.IsQuick && Voices >= WithInnerVoice;

    private static bool HasInner(Candidate candidate) => candidate.Voicing.Bells > (candidate.Voicing.Bass is null ? 0 : 1);

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
