namespace Revoicer.LeadSheets.Harmony;

/// <summary>A chord of the search.</summary>
/// <param name="Kind">Place in <see cref="ChordTemplate.All"/>; -1 for what makes no chord.</param>
/// <param name="Root">Semitones above C.</param>
/// <param name="Bass">Semitones above C; the root's where nothing else is heard to be the bass.</param>
internal readonly record struct ChordGuess(int Kind, int Root, int Bass)
{
    /// <summary>The pitch classes of the octave.</summary>
    public const int Tones = 12;

    /// <summary>No chord.</summary>
    public static ChordGuess None { get; } = new(-1, 0, 0);

    /// <summary>How many there are.</summary>
    public static int Count { get; } = 1 + (ChordTemplate.All.Count * Tones * Tones);

    /// <summary>Its number, from 0 for none.</summary>
    public int Number => Kind < 0 ? 0 : 1 + (((Kind * Tones) + Root) * Tones) + Bass;
}

/// <summary>A chord from a moment on.</summary>
/// <param name="From">Index of the moment.</param>
/// <param name="Chord">The chord.</param>
/// <param name="Before">What stands before it; null for the first.</param>
internal sealed record ChordFrom(int From, ChordGuess Chord, ChordFrom? Before);
