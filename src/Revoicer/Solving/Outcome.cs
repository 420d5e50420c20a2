using Revoicer.Values;

namespace Revoicer.Solving;

/// <summary>What a search ends with.</summary>
public abstract record Outcome
{
    private Outcome()
    {
    }

    /// <summary>An arrangement that keeps every rule.</summary>
    /// <param name="Choice">For each slot the number of a candidate.</param>
    /// <param name="Price">Its whole price, in thousandths of a clash unit.</param>
    /// <param name="Bound">No choice that keeps the rules is cheaper.</param>
    /// <param name="Starts">From how many starts the search went.</param>
    /// <param name="Lifted">Where a rule could not be kept and was lifted, in sentences.</param>
    public sealed record Found(Items<int> Choice, long Price, long Bound, int Starts, Items<string> Lifted) : Outcome;

    /// <summary>No choice keeps every rule.</summary>
    /// <param name="Rules">The rules, in words.</param>
    public sealed record Impossible(Items<string> Rules) : Outcome;
}
