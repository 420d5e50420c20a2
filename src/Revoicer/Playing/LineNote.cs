using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>A note of a given line that a limb is to be found for.</summary>
/// <param name="Note">The baton or pedal.</param>
/// <param name="At">When it is struck.</param>
public readonly record struct LineNote(WrittenNote Note, Seconds At)
{
    /// <summary>Whether it is written for the feet, so that a hand takes it only where no foot can.</summary>
    public bool IsForFeet { get; init; }
}
