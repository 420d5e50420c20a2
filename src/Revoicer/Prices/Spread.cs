using Revoicer.Music;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>How the bells of a voicing lie to each other, where that is priced.</summary>
internal static class Spread
{
    private const int Tenth = 15;
    private const int Twelfth = 19;
    private const int TwoOctaves = 24;
    private const int MiddleC = 60;

    /// <summary>Semitones beyond a twelfth between the bass and the tones above it, and once more those beyond two octaves.</summary>
    /// <param name="voicing">The voicing.</param>
    /// <param name="tuneBelow">The lowest note of a tune that is the bass; null where there is none.</param>
    public static int OverGap(Voicing voicing, WrittenNote? tuneBelow)
    {
        if ((voicing.SecondPedal ?? voicing.Bass ?? tuneBelow) is not { } low || voicing.Upper.Count == 0)
        {
            return 0;
        }

        var gap = (voicing.Upper[0].Note - low).Semitones;
        return Math.Max(0, gap - Twelfth) + Math.Max(0, gap - TwoOctaves);
    }

    /// <summary>
    /// Whether the chord's third lies less than a tenth over a bass below written middle C. Common practice: over a heavy bell
    /// root, fifth and octave stand close, the third a tenth or more above.
    /// </summary>
    /// <param name="voicing">The voicing.</param>
    /// <param name="third">The third of the chord; null where it has none.</param>
    public static bool HasLowThird(Voicing voicing, PitchClass? third)
    {
        if (voicing.Lowest is not { } low || low.Midi >= MiddleC || third is null || low.PitchClass == third)
        {
            return false;
        }

        bool IsLow(WrittenNote note) => note.PitchClass == third && (note - low).Semitones < Tenth;
        return (voicing.SecondPedal is { } second && IsLow(second)) || voicing.Upper.Any(baton => IsLow(baton.Note));
    }
}
