using Revoicer.Prices;
using Revoicer.Solving;

namespace Revoicer;

/// <summary>What comes of searching a plan where it may not cost more than a price.</summary>
internal abstract record PlanTried
{
    private PlanTried()
    {
    }

    /// <summary>It was searched.</summary>
    /// <param name="Prices">Its prices.</param>
    /// <param name="Outcome">What the search ended with.</param>
    public sealed record Searched(SheetPrices Prices, Outcome Outcome) : PlanTried;

    /// <summary>Every choice costs more than the price, so that it was left.</summary>
    /// <param name="Least">What every choice costs at the least, the tune with itself included, in thousandths.</param>
    public sealed record TooDear(long Least) : PlanTried;

    /// <summary>The deadline came first.</summary>
    public sealed record OutOfTime : PlanTried;
}
