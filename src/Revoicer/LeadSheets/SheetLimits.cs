using Revoicer.Music;

namespace Revoicer.LeadSheets;

/// <summary>How much one sheet may hold: what the arrangement file can say (docs/files.md), with room for any recital piece.</summary>
internal static class SheetLimits
{
    /// <summary>The most bars, as written and with repeats unfolded.</summary>
    public const int MostBars = 20_000;

    /// <summary>Places and lengths are this part of a quarter or coarser.</summary>
    public const int FinestPart = 10_000;

    /// <summary>The longest piece, repeats unfolded.</summary>
    public static readonly Beats LongestPiece = Beats.OfQuarters(100_000);
}
