using Revoicer.Music;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Arrangements;

/// <summary>What stood in the place of a chord before it was voiced anew.</summary>
/// <param name="Notes">Its bells under the tune, moved by as many octaves as the tune, upward; none where nothing was struck.</param>
/// <param name="IsKept">Whether the same bells are struck in the same places now.</param>
/// <param name="CostsMore">
/// By how much the whole would cost more with it, its neighbours as chosen, in thousandths; null where no way to
/// play it was open, and negative only where a rule forbade it.
/// </param>
/// <param name="Differences">Terms in which it differs, the worst first: its price less the chosen one's.</param>
public sealed record FormerChord(Items<WrittenNote> Notes, bool IsKept, long? CostsMore, Items<PricedTerm> Differences)
{
    /// <summary>Why no way to play it was open; null where one was.</summary>
    public Obstacle? Obstacle { get; init; }
}
