using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>What strikes: two hands on the manual, two feet on the pedals.</summary>
public enum Limb
{
    /// <summary>Left foot.</summary>
    LeftFoot,

    /// <summary>Right foot.</summary>
    RightFoot,

    /// <summary>Left hand.</summary>
    LeftHand,

    /// <summary>Right hand.</summary>
    RightHand,
}

/// <summary>One stroke on one bell, as it is played.</summary>
/// <param name="Note">The baton or pedal, as written.</param>
/// <param name="Limb">What strikes it.</param>
/// <param name="Beat">The place in the piece as heard that it belongs to, exact; a lead comes off it.</param>
/// <param name="Lead">How long before that place it is struck, as in a roll into the beat; not negative.</param>
/// <param name="At">When it is struck, from the start of the piece as played (the piece is shifted so that no stroke comes before its start).</param>
/// <param name="Level">Touch, relative to a default stroke.</param>
public sealed record Stroke(WrittenNote Note, Limb Limb, Beats Beat, Seconds Lead, Seconds At, Decibels Level)
{
    /// <summary>Whether it belongs to the tune, which is given, and not to what was chosen.</summary>
    public bool IsTune { get; init; }

    /// <summary>How the sheet writes it, for a stroke of the tune; null where nothing is written.</summary>
    public SheetNote? Sheet { get; init; }

    /// <summary>Whether music that exists writes it for the feet.</summary>
    public bool IsForFeet { get; init; }

    /// <summary>Whether a foot plays it.</summary>
    public bool IsPedal => Limb is Limb.LeftFoot or Limb.RightFoot;
}
