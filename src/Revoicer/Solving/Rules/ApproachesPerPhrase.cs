using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>A phrase has at most so many tones that lead into the next bass: more of them are a walking bass, which blurs on bells.</summary>
/// <param name="most">The sound's limit, 0 or more.</param>
public sealed class ApproachesPerPhrase(int most) : PhraseRule
{
    /// <inheritdoc/>
    public override string Words => $"a phrase has at most {most} {(most == 1 ? "tone that leads" : "tones that lead")} into the next bass";

    /// <summary>Their clash mostly keeps them few.</summary>
    public override bool IsSeldom => true;

    /// <inheritdoc/>
    public override int Count(Slot slot, Candidate candidate) => candidate.Approach is null ? 0 : 1;

    /// <inheritdoc/>
    public override int Most(IEnumerable<Slot> phrase) => most;
}
