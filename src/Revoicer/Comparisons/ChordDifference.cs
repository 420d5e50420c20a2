using Revoicer.Arrangements;
using Revoicer.Values;

namespace Revoicer.Comparisons;

/// <summary>A chord that two arrangements of a sheet take otherwise.</summary>
/// <param name="First">As the first has it.</param>
/// <param name="Other">As the other has it.</param>
/// <param name="Terms">What the other costs there less what the first costs, term by term, each as its own sound weighs it, the largest first.</param>
public sealed record ChordDifference(Choice First, Choice Other, Items<PricedTerm> Terms)
{
    /// <summary>The chords of which bells, limbs or times differ, at their first hearing, in order of time.</summary>
    public static Items<ChordDifference> Between(Arrangement first, Arrangement other)
    {
        var others = other.Choices.ToLookup(c => c.Start);
        return first.Choices
            .Where(c => c.Pass == 1)
            .SelectMany(c => others[c.Start].Take(1), (c, o) => (First: c, Other: o))
            .Where(pair => !Strokes(pair.First).SequenceEqual(Strokes(pair.Other)))
            .Select(pair => new ChordDifference(pair.First, pair.Other, Differences(pair.First, pair.Other)))
            .ToItems();
    }

    private static IEnumerable<object> Strokes(Choice choice) => choice.Strokes.Select(s => (object)(s.Note, s.Limb, s.Beat, s.Lead.Value > 0));

    private static Items<PricedTerm> Differences(Choice first, Choice other)
    {
        var before = first.Terms.ToDictionary(t => t.Term, t => t.Thousandths);
        var after = other.Terms.ToDictionary(t => t.Term, t => t.Thousandths);
        return before.Keys.Union(after.Keys)
            .Select(term => new PricedTerm(term, after.GetValueOrDefault(term) - before.GetValueOrDefault(term)))
            .Where(t => t.Thousandths != 0)
            .OrderByDescending(t => Math.Abs(t.Thousandths))
            .ThenBy(t => t.Term, StringComparer.Ordinal)
            .ToItems();
    }
}
