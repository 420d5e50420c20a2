using Revoicer.Text;

namespace Revoicer.LeadSheets.Wishes;

/// <summary>One thing that a player asks of a chord, or of every chord of a passage.</summary>
/// <param name="Where">Where it stands in the file.</param>
/// <param name="At">The place of the sheet.</param>
/// <param name="Thing">What of the voicing it speaks of.</param>
/// <param name="IsBan">Whether that is forbidden instead of asked for.</param>
public sealed record Wish(Place Where, WishedPlace At, WishedThing Thing, bool IsBan)
{
    /// <summary>Where its bar stands in the file.</summary>
    public Place WhereBar { get; init; } = Where;

    /// <summary>Where its beat stands in the file; its bar where it names no beat.</summary>
    public Place WhereBeat { get; init; } = Where;

    /// <summary>The wish in words: "bar 5 beat 1: the bass on G3".</summary>
    public string Words => $"{At.Words}: {(IsBan ? Thing.Forbidden : Thing.Words)}";
}
