using Revoicer.Arrangements;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Comparisons;

/// <summary>One draft of a trade-off between clash and carry.</summary>
/// <param name="Sound">The sound under which drafting gives it again; its rule on carry is what was asked.</param>
/// <param name="Compared">The draft and its figures, or why there is none.</param>
public sealed record TradeOffPoint(Sound Sound, ComparedSetting Compared)
{
    /// <summary>How far every chord was to carry at least; null where nothing was asked.</summary>
    public Decibels? Asked => Sound.CarryAtLeast.Value > Sound.AnyCarry.Value ? Sound.CarryAtLeast : null;

    /// <summary>The draft; null where there is none.</summary>
    public Drafting.Made? Made => Compared.Made;
}
