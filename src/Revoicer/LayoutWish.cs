namespace Revoicer;

/// <summary>Where the player wants the tune to lie.</summary>
public enum LayoutWish
{
    /// <summary>Over the chords.</summary>
    Above,

    /// <summary>Under the chords, in the pedals and the low manual.</summary>
    Below,

    /// <summary>Wherever the whole is cheaper.</summary>
    Best,
}
