using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

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
    /// <param name="Slots">For each slot what came next, and what stood in the way.</param>
    /// <param name="Lifted">Where a rule could not be kept and was lifted, in sentences.</param>
    public sealed record Found(Items<int> Choice, long Price, long Bound, int Starts, Items<SlotOutcome> Slots, Items<string> Lifted) : Outcome;

    /// <summary>No choice keeps every rule.</summary>
    /// <param name="Conflicts">What stands against each other; at least one.</param>
    public sealed record Impossible(Items<Conflict> Conflicts) : Outcome;
}

/// <summary>Rules that no choice keeps together, and of which none can be left out.</summary>
/// <param name="Rules">The rules; at least one.</param>
/// <param name="Slot">The chord to which they leave no voicing; null where they meet over several chords.</param>
public sealed record Conflict(Items<Rule> Rules, Slot? Slot);

/// <summary>What the search says of one slot, all others as chosen.</summary>
/// <param name="RunnerUp">The cheapest candidate with other bells that the rules on the slot allow; null where there is none.</param>
/// <param name="BoundBy">The rule that forbids a cheaper candidate, in words; null where none does.</param>
public sealed record SlotOutcome(int? RunnerUp, string? BoundBy);
