using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>How the clash goes from chord to chord in one draft.</summary>
/// <param name="Name">The setting's name.</param>
/// <param name="Chords">Its chords as heard, in order.</param>
public sealed record ClashLine(string Name, Items<ClashOfChord> Chords);
