namespace Revoicer.Music;

/// <summary>Which scale a key is made of, each named by the note of the major scale on which it begins.</summary>
public enum Mode
{
    /// <summary>From the first note.</summary>
    Major,

    /// <summary>From the sixth: natural minor.</summary>
    Minor,

    /// <summary>From the second: minor with a major sixth.</summary>
    Dorian,

    /// <summary>From the third: minor with a minor second.</summary>
    Phrygian,

    /// <summary>From the fourth: major with an augmented fourth.</summary>
    Lydian,

    /// <summary>From the fifth: major with a minor seventh.</summary>
    Mixolydian,

    /// <summary>From the seventh: minor with a minor second and a diminished fifth.</summary>
    Locrian,
}
