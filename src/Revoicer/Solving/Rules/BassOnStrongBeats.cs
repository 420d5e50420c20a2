using System.Globalization;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>Where a new chord comes on a strong beat a bass bell is struck, in a share of the places of every phrase.</summary>
/// <param name="share">The sound's share, 0..1.</param>
public sealed class BassOnStrongBeats(double share) : PhraseRule
{
    /// <inheritdoc/>
    public override string Words => string.Create(
        CultureInfo.InvariantCulture, $"new chords on strong beats have a bass bell in {share * 100:0} % of the places of a phrase");

    /// <inheritdoc/>
    public override int Count(Slot slot, Candidate candidate) => Asks(slot) && candidate.Voicing.Bass is null ? 1 : 0;

    /// <inheritdoc/>
    public override int Most(IEnumerable<Slot> phrase) => (int)Math.Floor((1 - share) * phrase.Count(Asks) + 1e-9);

    private static bool Asks(Slot slot) => slot.IsStrong && slot.IsNewChord && !slot.IsQuick;
}
