using Revoicer.Chords;

namespace Revoicer.Tests.Oracles;

/// <summary>
/// A tone that leads on, after the rules of part writing (common practice): in a dominant that goes to the chord a fourth above,
/// the third rises a semitone and the minor seventh falls a semitone or a tone; a suspended fourth falls to the third.
/// </summary>
/// <param name="PitchClass">The tone, 0 for C.</param>
/// <param name="Ways">Semitones that it may go.</param>
internal sealed record Tendency(int PitchClass, int[] Ways)
{
    public bool IsLost(int tone, int[] next) => tone % 12 == PitchClass && !Ways.Append(0).Any(way => next.Contains(tone + way));

    public static IEnumerable<Tendency> Of(ChordSymbol chord, ChordSymbol next)
    {
        var above = chord.Tones.Select(t => (t.Degree, t.Role)).ToArray();
        var root = chord.Root.PitchClass.Value;
        var motion = (next.Root.PitchClass.Value - root + 12) % 12;
        if (motion == 5 && above.Any(t => t.Degree == new Degree(3)))
        {
            yield return new Tendency((root + 4) % 12, [1]);
            if (above.Any(t => t.Degree == new Degree(7, -1)))
            {
                yield return new Tendency((root + 10) % 12, [-1, -2]);
            }
        }

        if (motion == 0 && above.All(t => t.Degree.Number != 3) && next.Tones.Any(t => t.Degree.Number == 3) && above.Contains((new Degree(4), ToneRole.Guide)))
        {
            yield return new Tendency((root + 5) % 12, [-1, -2]);
        }
    }
}
