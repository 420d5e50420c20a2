using Revoicer.Music;

namespace Revoicer.Clashes;

/// <summary>
/// A chord as the clash model hears it: its sounding pitch classes (slash bass included) and which of them is its
/// third. The default value is no chord at all.
/// </summary>
/// <param name="Classes">The sounding pitch classes; a chord read in the written key has to be <see cref="Moved"/> by the tower's transposition.</param>
/// <param name="Third">The chord's minor or major third; null where it has none.</param>
public readonly record struct ChordClasses(PitchClassSet Classes, PitchClass? Third)
{
    /// <summary>No chord: contradicts nothing.</summary>
    public static ChordClasses None => default;

    /// <summary>The chord that sounds a number of semitones higher (lower if negative).</summary>
    public ChordClasses Moved(int semitones)
    {
        var classes = Classes;
        var moved = Enumerable.Range(0, 12).Select(PitchClass.Of).Where(classes.Contains).Select(c => c + semitones);
        return new ChordClasses(PitchClassSet.Of(moved), Third + semitones);
    }
}
