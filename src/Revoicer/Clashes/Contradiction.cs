using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// How far a partial contradicts a chord: it sounds a semitone away from a chord tone without being one. The weights
/// are estimates, chosen so that a minor triad clashes less than the major triad on its root, as players hold.
/// </summary>
internal static class Contradiction
{
    /// <summary>What a contradiction dose counts beside a roughness dose; an estimate.</summary>
    public const double Weight = 0.25;

    // Within 25 cents of its pitch class a partial counts whole, from 50 cents on not at all; estimates.
    private const double WholeWithin = 0.25;
    private const double NothingFrom = 0.50;

    /// <summary>w: 1 for a semitone from the chord's third, 1/2 from another tone, 0 for chord tones and the rest.</summary>
    public static double WeightOf(PitchClass partial, ChordClasses chord) =>
        Beside(partial, chord) is not { } tone ? 0 : tone == chord.Third ? 1 : 0.5;

    /// <summary>w of every pitch class, by semitones above C.</summary>
    public static double[] WeightsOf(ChordClasses chord) => [.. Enumerable.Range(0, 12).Select(c => WeightOf(PitchClass.Of(c), chord))];

    /// <summary>The chord tone a semitone from a partial that is none: the third before any other; null where there is none.</summary>
    public static PitchClass? Beside(PitchClass partial, ChordClasses chord)
    {
        if (chord.Classes.Contains(partial))
        {
            return null;
        }

        var below = partial + -1;
        var above = partial + 1;
        return chord.Third is { } third && (below == third || above == third) ? third
            : chord.Classes.Contains(below) ? below
            : chord.Classes.Contains(above) ? above
            : null;
    }

    /// <summary>
    /// The pitch class of a partial, counted from its own bell, and v, how surely it is of that class. Counting from
    /// the bell keeps pitch, temperament and transposition of the tower out of the matter.
    /// </summary>
    public static (PitchClass Class, double Certainty) ClassOf(Bell bell, Hertz partial)
    {
        var semitones = 12 * Math.Log2(partial.Value / bell.Strike.Value);
        var nearest = Math.Round(semitones);
        var certainty = (NothingFrom - Math.Abs(semitones - nearest)) / (NothingFrom - WholeWithin);
        return (bell.StrikeNote.PitchClass + (int)nearest, Math.Clamp(certainty, 0, 1));
    }
}
