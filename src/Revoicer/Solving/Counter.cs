using Google.OrTools.Sat;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving;

/// <summary>One rule's count: which candidates of each slot count, and how many may in each phrase.</summary>
/// <param name="Counts">For each slot and candidate.</param>
/// <param name="Most">For each phrase.</param>
internal sealed record Counter(bool[][] Counts, int[] Most)
{
    /// <summary>Whether the search leaves it out until an answer breaks it.</summary>
    public bool IsSeldom { get; init; }

    /// <summary>The count of a rule over the slots of a plan.</summary>
    public static Counter Of(PhraseRule rule, SlotPlan plan, Func<int, Items<Candidate>> candidates) => new(
        [.. plan.Slots.Select(slot => candidates(slot.Index).Select(c => rule.Counts(slot, c)).ToArray())],
        [.. Enumerable.Range(0, plan.Phrases).Select(p => rule.Most(plan.Slots.Where(s => s.Phrase == p)))])
    {
        IsSeldom = rule.IsSeldom,
    };

    /// <summary>States the count to a constraint model: one sum a phrase.</summary>
    /// <param name="model">The model.</param>
    /// <param name="chosen">For each slot the candidates it chooses from, each with its literal.</param>
    /// <param name="phraseOfSlot">The phrase of each slot.</param>
    public void AddTo(CpModel model, ChosenLiteral[][] chosen, int[] phraseOfSlot)
    {
        for (var phrase = 0; phrase < Most.Length; phrase++)
        {
            var count = LinearExpr.NewBuilder();
            for (var slot = 0; slot < chosen.Length; slot++)
            {
                if (phraseOfSlot[slot] == phrase)
                {
                    count.AddSum(chosen[slot].Where(c => Counts[slot][c.Candidate]).Select(c => c.IsChosen));
                }
            }

            model.Add(count <= Most[phrase]);
        }
    }
}
