using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>A phrase has at most so many rolls: a roll is for effect.</summary>
/// <param name="most">The sound's limit, 0 or more.</param>
public sealed class RollsPerPhrase(int most) : PhraseRule
{
    /// <inheritdoc/>
    public override string Words => most == 1 ? "a phrase has at most 1 roll" : $"a phrase has at most {most} rolls";

    /// <inheritdoc/>
    public override bool Counts(Slot slot, Candidate candidate) => candidate.Figure == Figure.Rolled;

    /// <inheritdoc/>
    public override int Most(IEnumerable<Slot> phrase) => most;
}
