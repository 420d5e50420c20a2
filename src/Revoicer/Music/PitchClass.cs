using System.Numerics;

namespace Revoicer.Music;

/// <summary>One of the twelve tones of the octave, C = 0 to B = 11.</summary>
public readonly record struct PitchClass
{
    private PitchClass(int value) => Value = value;

    /// <summary>0 for C to 11 for B.</summary>
    public int Value { get; }

    /// <summary>The class of any number of semitones above a C; negative numbers count downward.</summary>
    public static PitchClass Of(int semitonesAboveC) => new(((semitonesAboveC % 12) + 12) % 12);

    /// <summary>The class a number of semitones above.</summary>
    public static PitchClass operator +(PitchClass pitchClass, int semitones) => Of(pitchClass.Value + semitones);

    /// <summary>Semitones upward from b to a, 0..11.</summary>
    public static int operator -(PitchClass a, PitchClass b) => Of(a.Value - b.Value).Value;
}

/// <summary>A set of pitch classes; the default value is the empty set.</summary>
public readonly record struct PitchClassSet
{
    private PitchClassSet(int mask) => Mask = mask;

    /// <summary>Bit k stands for pitch class k.</summary>
    public int Mask { get; }

    /// <summary>How many classes it holds.</summary>
    public int Count => BitOperations.PopCount((uint)Mask);

    /// <summary>The set of the given classes.</summary>
    public static PitchClassSet Of(IEnumerable<PitchClass> classes) =>
        new(classes.Aggregate(0, (mask, c) => mask | (1 << c.Value)));

    /// <summary>Whether the class is in the set.</summary>
    public bool Contains(PitchClass pitchClass) => (Mask & (1 << pitchClass.Value)) != 0;

    /// <summary>What both sets hold.</summary>
    public PitchClassSet Common(PitchClassSet other) => new(Mask & other.Mask);

    /// <summary>The set without what another holds.</summary>
    public PitchClassSet Except(PitchClassSet other) => new(Mask & ~other.Mask);

    /// <summary>The set with one class more.</summary>
    public PitchClassSet With(PitchClass pitchClass) => new(Mask | (1 << pitchClass.Value));
}
