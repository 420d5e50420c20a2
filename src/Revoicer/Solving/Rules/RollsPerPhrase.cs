using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>A phrase has at most so many rolls: a roll is for effect. That of the last chord is not counted: there it is usual.</summary>
/// <param name="most">The sound's limit, 0 or more.</param>
public sealed class RollsPerPhrase(int most) : PhraseRule
{
    /// <inheritdoc/>
    public override string Words => $"a phrase has at most {most} {(most == 1 ? "roll" : "rolls")} besides the last chord's";

    /// <inheritdoc/>
    public override int Count(Slot slot, Candidate candidate) => candidate.Figure == Figure.Rolled && !slot.IsLast ? 1 : 0;

    /// <inheritdoc/>
    public override int Most(IEnumerable<Slot> phrase) => most;
}
