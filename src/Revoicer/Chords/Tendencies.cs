using Revoicer.Music;

namespace Revoicer.Chords;

/// <summary>
/// Tones of a chord that lead into the next one: the third of a dominant goes up a semitone, its seventh goes down a step,
/// a suspended fourth goes down into the third. Common practice.
/// </summary>
/// <param name="Up">The tone that goes up a semitone; null where there is none.</param>
/// <param name="Down">The tone that goes down a semitone or two; null where there is none.</param>
internal readonly record struct Tendencies(PitchClass? Up, PitchClass? Down)
{
    private const int Fourth = 5;
    private const int MajorThird = 4;
    private const int MinorSeventh = 10;

    /// <summary>The tones that lead on.</summary>
    public PitchClassSet Tones => PitchClassSet.Of(new[] { Up, Down }.OfType<PitchClass>());

    /// <summary>What of a chord leads into another.</summary>
    public static Tendencies Between(ChordSymbol chord, ChordSymbol next)
    {
        var (root, after) = (chord.Root.PitchClass.Value, next.Root.PitchClass.Value);
        if (chord.Third is not { } third)
        {
            var fourth = At(root + Fourth);
            return root == after && next.Third is not null && chord.Tones.Any(t => t.PitchClass == fourth && t.Role == ToneRole.Guide)
                ? new Tendencies(null, fourth)
                : default;
        }

        var seventh = At(root + MinorSeventh);
        return after == (root + Fourth) % 12 && third == At(root + MajorThird)
            ? new Tendencies(third, chord.Tones.Any(t => t.PitchClass == seventh) ? seventh : null)
            : default;
    }

    /// <summary>How many of some tones do not go where they lead; none where there is nothing to go to.</summary>
    /// <param name="from">MIDI numbers.</param>
    /// <param name="to">MIDI numbers of the next chord. A tone that stays is well led too.</param>
    public int Unanswered(int[] from, int[] to)
    {
        if (to.Length == 0 || this == default)
        {
            return 0;
        }

        var unanswered = 0;
        foreach (var tone in from)
        {
            unanswered += IsLedAstray(tone, to) ? 1 : 0;
        }

        return unanswered;
    }

    private bool IsLedAstray(int tone, int[] to) =>
        At(tone) == Up ? !to.Contains(tone) && !to.Contains(tone + 1)
        : At(tone) == Down && !to.Contains(tone) && !to.Contains(tone - 1) && !to.Contains(tone - 2);

    private static PitchClass At(int tone) => PitchClass.Of(tone);
}
