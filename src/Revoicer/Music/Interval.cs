namespace Revoicer.Music;

/// <summary>A distance between two pitches in semitones, upward positive.</summary>
public readonly record struct Interval(int Semitones) : IComparable<Interval>
{
    /// <inheritdoc/>
    public int CompareTo(Interval other) => Semitones.CompareTo(other.Semitones);

    /// <summary>The same distance without direction.</summary>
    public Interval Size => new(Math.Abs(Semitones));

    /// <summary>The sum.</summary>
    public static Interval operator +(Interval a, Interval b) => new(a.Semitones + b.Semitones);
}

/// <summary>
/// How far a tower's strike notes lie above the notes the player reads: 12 semitones on a concert-pitch instrument.
/// </summary>
/// <param name="Semitones">Semitones from written note to strike note.</param>
public readonly record struct Transposition(int Semitones);
