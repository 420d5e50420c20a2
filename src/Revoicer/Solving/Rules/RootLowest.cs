using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>The first chord, the last, cadences and slash chords have the root, or the slash bass, in the lowest bell.</summary>
public sealed class RootLowest : SlotRule
{
    /// <inheritdoc/>
    public override string Words => "first chord, last chord, cadences and slash chords have the root or slash bass in the lowest bell";

    /// <inheritdoc/>
    public override bool Concerns(Slot slot) => slot.WantsRootLowest;

    /// <inheritdoc/>
    public override bool Allows(Slot slot, Candidate candidate) => slot.HasRootLowest(candidate.Voicing);
}
