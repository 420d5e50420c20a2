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
    public sealed record Found(Items<int> Choice, long Price, long Bound, int Starts, Items<SlotOutcome> Slots, Items<string> Lifted) : Outcome
    {
        /// <summary>Whether the deadline came before all was looked at.</summary>
        public bool WasCutShort { get; init; }
    }

    /// <summary>No choice keeps every rule.</summary>
    /// <param name="Conflicts">What stands against each other; at least one.</param>
    public sealed record Impossible(Items<Conflict> Conflicts) : Outcome;
}

/// <summary>Rules that no choice keeps together, and of which none can be left out.</summary>
/// <param name="Rules">The rules; at least one.</param>
/// <param name="Slot">The chord to which they leave no voicing; null where they meet over several chords.</param>
public sealed record Conflict(Items<Rule> Rules, Slot? Slot)
{
    /// <summary>The first and the last chord of the shortest stretch on which they cannot be kept; null where that was not looked for or is no stretch.</summary>
    public (Slot From, Slot To)? Stretch { get; init; }
}

/// <summary>What the search says of one slot, all others as chosen.</summary>
/// <param name="Alternatives">
/// The cheapest candidates with other bells that every rule admits there, cheapest first, no two with the same bells; at most
/// <see cref="MostAlternatives"/>.
/// </param>
/// <param name="Barred">The cheapest candidate that would cost less than the chosen one but breaks a rule; null where there is none.</param>
public sealed record SlotOutcome(Items<int> Alternatives, BarredCandidate? Barred)
{
    /// <summary>So many alternatives are listed: enough to choose from, few enough to read.</summary>
    public const int MostAlternatives = 4;

    /// <summary>What is said where there was no time to look.</summary>
    public static SlotOutcome Unknown { get; } = new([], null);

    /// <summary>The candidates of which it says something.</summary>
    internal IEnumerable<int> Candidates => Barred is { } barred ? [.. Alternatives, barred.Candidate] : Alternatives;

    /// <summary>The same where the candidates have other numbers.</summary>
    internal SlotOutcome Numbered(Func<int, int> number) => new(
        Alternatives.Select(number).ToItems(), Barred is { } barred ? barred with { Candidate = number(barred.Candidate) } : null);
}

/// <summary>A candidate that a rule forbids.</summary>
/// <param name="Candidate">Its number in the slot.</param>
/// <param name="Rule">The rule in words, as a clause.</param>
public sealed record BarredCandidate(int Candidate, string Rule);
