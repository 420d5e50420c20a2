using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>The keys among which a tune sounds best on a tower: high enough to stand out, low enough to sing. Common practice.</summary>
/// <param name="From">The lowest of them.</param>
/// <param name="To">The highest of them.</param>
public sealed record TuneHome(WrittenNote From, WrittenNote To)
{
    private static readonly TuneHome Usual = new(WrittenNote.AtMidi(72), WrittenNote.AtMidi(84));

    /// <summary>By how many semitones a key lies outside; 0 inside.</summary>
    public int Outside(WrittenNote note) => Math.Max(0, Math.Max((From - note).Semitones, (note - To).Semitones));

    /// <summary>Where a tune over the chords is at home unless the tower says otherwise: C5 to C6, or the tower's highest octave where it does not reach so far. Estimate.</summary>
    /// <param name="highest">The tower's highest key.</param>
    public static TuneHome Over(WrittenNote highest) =>
        highest >= Usual.To ? Usual : new TuneHome(WrittenNote.AtMidi(Math.Max(0, highest.Midi - 12)), highest);

    /// <summary>Where a tune under the chords is at home unless the tower says otherwise: the upper half of the pedals. Estimate.</summary>
    /// <param name="from">The lowest pedal.</param>
    /// <param name="to">The highest pedal.</param>
    public static TuneHome Under(WrittenNote from, WrittenNote to) => new(WrittenNote.AtMidi((from.Midi + to.Midi + 1) / 2), to);
}
