using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving;

/// <summary>One rule that asks for a least: which candidates of which slots count, how many must, and of how many slots.</summary>
/// <param name="Counts">For each slot and candidate.</param>
/// <param name="AtLeast">How many slots are to have a candidate that counts.</param>
/// <param name="InStretch">For each slot whether the rule looks at it.</param>
internal sealed record Least(bool[][] Counts, int AtLeast, bool[] InStretch)
{
    /// <summary>The count of a rule over the slots of a plan.</summary>
    public static Least Of(OtherBells rule, SlotPlan plan, Func<int, Items<Candidate>> candidates) => new(
        [.. plan.Slots.Select(slot => candidates(slot.Index).Select(c => rule.Counts(slot, c)).ToArray())],
        rule.Least,
        [.. plan.Slots.Select(rule.Concerns)]);

    /// <summary>How many slots of a choice count.</summary>
    public int Count(IReadOnlyList<int> choice)
    {
        var count = 0;
        for (var slot = 0; slot < Counts.Length; slot++)
        {
            count += Counts[slot][choice[slot]] ? 1 : 0;
        }

        return count;
    }

    /// <summary>Whether a choice has as many as are asked for.</summary>
    public bool IsKept(IReadOnlyList<int> choice) => Count(choice) >= AtLeast;

    /// <summary>Whether a choice that keeps it still does with another candidate in one slot.</summary>
    public bool AllowsChange(IReadOnlyList<int> choice, int slot, int candidate) =>
        Counts[slot][candidate] || !Counts[slot][choice[slot]] || Count(choice) > AtLeast;
}
