using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>Something every arrangement keeps, whatever it costs.</summary>
public abstract class Rule
{
    /// <summary>The rule in the words of the trade, as a clause: "a phrase has at most 2 rolls".</summary>
    public abstract string Words { get; }
}

/// <summary>A rule on one slot: it takes candidates away.</summary>
public abstract class SlotRule : Rule
{
    /// <summary>Whether the rule speaks of the slot at all.</summary>
    public abstract bool Concerns(Slot slot);

    /// <summary>Whether it allows a candidate of a slot that it concerns.</summary>
    public abstract bool Allows(Slot slot, Candidate candidate);
}

/// <summary>A rule that counts over the slots of a phrase and sets a most.</summary>
public abstract class PhraseRule : Rule
{
    /// <summary>For how much a candidate counts; 0 for nothing.</summary>
    public abstract int Count(Slot slot, Candidate candidate);

    /// <summary>Whether answers mostly keep it unasked, so that the search need not carry its count along from the start.</summary>
    public virtual bool IsSeldom => false;

    /// <summary>For how much the candidates of a phrase of these slots may count together.</summary>
    public abstract int Most(IEnumerable<Slot> phrase);
}
