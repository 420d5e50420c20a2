using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Audits;

/// <summary>Bar and beat of places in a piece as heard.</summary>
/// <param name="Bars">The bars as heard.</param>
internal sealed record Places(Items<ArrangedBar> Bars)
{
    /// <summary>The bar of a place and the beat in it, counted from 1; a pickup fills the end of a bar.</summary>
    public (ArrangedBar Bar, double Beat) Of(Beats place)
    {
        var bar = Bars[Math.Max(0, Sorted.LastUpTo(Bars, place, b => b.Start))];
        return (bar, ((place - bar.Start + bar.Offset).Quarters / bar.Meter.Beat.Quarters) + 1);
    }
}
