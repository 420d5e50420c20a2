using Google.OrTools.Sat;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving;

/// <summary>One rule's count: for how much each candidate of each slot counts, and how much may come together in each phrase.</summary>
/// <param name="Counts">For each slot and candidate, 0 or more.</param>
/// <param name="Most">For each phrase.</param>
internal sealed record Counter(int[][] Counts, int[] Most)
{
    /// <summary>Whether the search leaves it out until an answer breaks it.</summary>
    public bool IsSeldom { get; init; }

    /// <summary>The count of a rule over the slots of a plan.</summary>
    public static Counter Of(PhraseRule rule, SlotPlan plan, Func<int, Items<Candidate>> candidates) => new(
        [.. plan.Slots.Select(slot => candidates(slot.Index).Select(c => rule.Count(slot, c)).ToArray())],
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
                    foreach (var (candidate, isChosen) in chosen[slot].Where(c => Counts[slot][c.Candidate] > 0))
                    {
                        count.AddTerm(isChosen, Counts[slot][candidate]);
                    }
                }
            }

            model.Add(count <= Most[phrase]);
        }
    }
}
