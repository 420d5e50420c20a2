using Revoicer.Music;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>
/// Of the chords of a stretch, or of the whole piece, at least so many strike other bells than they did before: in an
/// earlier answer, or the first time through a repeat.
/// </summary>
/// <param name="words">The rule as a clause.</param>
/// <param name="before">By the index of each slot of the stretch the bells that were struck there, lowest first.</param>
/// <param name="least">How many are to differ; 1 or more.</param>
public sealed class OtherBells(string words, IReadOnlyDictionary<int, Items<WrittenNote>> before, int least) : Rule
{
    /// <inheritdoc/>
    public override string Words => words;

    /// <summary>How many slots are to differ.</summary>
    public int Least => least;

    /// <summary>Whether a slot lies in the stretch.</summary>
    public bool Concerns(Slot slot) => before.ContainsKey(slot.Index);

    /// <summary>Whether a candidate strikes other bells; false outside the stretch.</summary>
    public bool Counts(Slot slot, Candidate candidate) =>
        before.TryGetValue(slot.Index, out var bells) && candidate.ChordNotes != bells;
}
