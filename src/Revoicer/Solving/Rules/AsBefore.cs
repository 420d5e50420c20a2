using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>Certain chords are played with the very strokes of an earlier answer.</summary>
/// <param name="words">The rule as a clause.</param>
/// <param name="before">By the index of each slot that is held the strokes that it had.</param>
public sealed class AsBefore(string words, IReadOnlyDictionary<int, Items<SlotStroke>> before) : SlotRule
{
    /// <inheritdoc/>
    public override string Words => words;

    /// <inheritdoc/>
    public override bool Concerns(Slot slot) => before.ContainsKey(slot.Index);

    /// <inheritdoc/>
    public override bool Allows(Slot slot, Candidate candidate) => candidate.Strokes == before[slot.Index];
}
