using Revoicer.Clashes;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>A chord as heard, on the clock of the piece as played, with what is struck for it.</summary>
/// <param name="Chord">What it sounds; <see cref="ChordClasses.None"/> where no chord is named.</param>
/// <param name="At">When its time begins; a roll that leads into it begins before.</param>
/// <param name="Until">When its time ends.</param>
/// <param name="Strokes">Its strokes in order of time; those of a tune are not among them.</param>
internal sealed record ChordInTime(ChordClasses Chord, Seconds At, Seconds Until, Items<Stroke> Strokes);
