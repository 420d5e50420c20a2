using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>How a player wants a sheet cut otherwise than by itself.</summary>
/// <param name="PhraseBars">Numbers of the written bars in which phrases begin; none where the sheet's own signs and lengths decide.</param>
/// <param name="PassesApart">Whether what a repeat lets sound again may be voiced otherwise each time, and so is cut into slots of its own.</param>
public sealed record CutWish(Items<int> PhraseBars, bool PassesApart)
{
    /// <summary>As the sheet itself asks.</summary>
    public static CutWish None { get; } = new([], PassesApart: false);
}
