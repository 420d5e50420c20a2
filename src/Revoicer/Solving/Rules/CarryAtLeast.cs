using System.Globalization;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>
/// Every chord that is not quick carries at least so far, with the tune over it; where none of the voicings that the slot
/// rules leave does, as far as the one of them that carries farthest. So something is left everywhere, and who asks for more
/// is never left with more voicings of a chord.
/// </summary>
/// <param name="least">How far, re one stroke of C4 over the same time.</param>
public sealed class CarryAtLeast(Decibels least) : Rule
{
    // The same strokes added up in another order may differ in their last digits.
    private const double Same = 1e-9;

    /// <inheritdoc/>
    public override string Words => string.Create(
        CultureInfo.InvariantCulture, $"chords of 0.8 s and more carry at least {least.Value:0.##} dB, or as far as any of their voicings does");

    /// <summary>
    /// What it leaves of some candidates of a slot; at least one of them, if there are any. A tone that leads into the next bass
    /// is never asked for: it needs that bass.
    /// </summary>
    /// <param name="slot">The slot.</param>
    /// <param name="candidates">Numbers of candidates.</param>
    /// <param name="carry">How far each carries.</param>
    /// <param name="leadsOn">Whether each has a tone that leads into the next bass.</param>
    internal int[] Left(Slot slot, int[] candidates, Func<int, Decibels> carry, Func<int, bool> leadsOn)
    {
        if (slot.IsQuick || candidates.Length == 0)
        {
            return candidates;
        }

        double[] carries = [.. candidates.Select(c => carry(c).Value)];
        var farthest = candidates.Zip(carries).Where(c => !leadsOn(c.First)).Select(c => c.Second).DefaultIfEmpty(carries.Min()).Max();
        var asked = Math.Min(least.Value, farthest) - Same;
        return [.. candidates.Where((_, i) => carries[i] >= asked)];
    }
}
