namespace Revoicer.Music;

/// <summary>A time signature.</summary>
/// <param name="Upper">Note values in a bar, at least 1.</param>
/// <param name="Lower">The note value: 2, 4, 8 or 16.</param>
public readonly record struct Meter(int Upper, int Lower)
{
    /// <summary>Whether the beat is divided in three: 6/8, 9/8, 12/8.</summary>
    public bool IsCompound => Lower >= 8 && Upper > 3 && Upper % 3 == 0;

    /// <summary>The beat that is counted: the lower note value, a dotted one in compound metres.</summary>
    public Beats Beat => Beats.OfQuarters(IsCompound ? 12 : 4, Lower);

    /// <summary>How long a full bar is.</summary>
    public Beats Bar => Beats.OfQuarters(4L * Upper, Lower);

    /// <summary>Beats in a full bar.</summary>
    public int BeatsInBar => IsCompound ? Upper / 3 : Upper;

    /// <summary>
    /// The strongest beat inside the bar, where a long bar is parted: the middle of bars of two or four beats; bars of
    /// three beats have none that parts them evenly and give null.
    /// </summary>
    public Beats? InnerBeat => BeatsInBar is 2 or 4 ? Bar / 2 : null;

    /// <summary>
    /// Whether a place in the bar is a strong beat: the first; in bars of four beats, and of two dotted or half-note
    /// beats, the middle one too (common practice).
    /// </summary>
    public bool IsStrong(Beats fromBarStart) =>
        fromBarStart == Beats.Zero || (HasStrongMiddle && fromBarStart == Bar / 2);

    private bool HasStrongMiddle => BeatsInBar == 4 || (BeatsInBar == 2 && (IsCompound || Lower == 2));

    /// <summary>"6/8".</summary>
    public override string ToString() => $"{Upper}/{Lower}";
}
