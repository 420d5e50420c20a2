using FsCheck.Xunit;
using Revoicer.Bells;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Tests.Oracles;
using Revoicer.Tests.Prices;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>
/// What raising a weight does. Let x be cheapest under S + w T and y under S + v T, with v greater than w, over the same choices. Then
/// S(x) + w T(x) is at most S(y) + w T(y), and S(y) + v T(y) at most S(x) + v T(x). Added up, (v - w) T(y) is at most (v - w) T(x): what the
/// term comes to, its weight left out, never rises. (With the weight it may: if nothing else is open, twice the weight is twice
/// the price.) Rules do not matter, as long as the weight does not change them.
/// </summary>
public sealed class WeightLaws
{
    private static readonly string[][] Sheets = [["C", "G7", "C"], ["Em G7", "C"], ["Cmaj7", "Em", "G7"], ["Dm7 G7", "C"]];

    private static readonly Tower Chapel = ShippedTowers.Named("chapel-23");

    // Of these each comes to whole units at weight 1, so that whole weights leave nothing to rounding.
    private static readonly (Term Term, Func<Sound, double, Sound> With)[] Words =
    [
        (Term.VoiceLeading, (sound, weight) => sound with { VoiceLeading = weight }),
        (Term.Thin, (sound, weight) => sound with { Thin = weight }),
        (Term.DoubledTones, (sound, weight) => sound with { Doubled = weight }),
        (Term.Gap, (sound, weight) => sound with { Gap = weight }),
    ];

    [Law(Arbitrary = [typeof(ProblemGens)])]
    public void What_a_term_comes_to_never_rises_with_its_weight(ChoiceProblem problem, int seed)
    {
        var random = new Random(seed);
        int[] sizes = [.. Enumerable.Range(0, problem.Prices.Count).Select(s => problem.Prices.Alone(s).Length)];
        var term = ProblemGens.Prices(random, sizes, distance => distance == 1 ? 0.8 : 0.4);
        var (light, heavy) = (random.Next(4), 4 + random.Next(4));
        if (Cheapest(light) is { } before && Cheapest(heavy) is { } after)
        {
            Assert.True(term.Price(after) <= term.Price(before));
        }

        int[]? Cheapest(int weight)
        {
            var answer = Search.Run(new Weighed(problem.Prices, term, weight), problem.Allowed, problem.Counters, ProofEffort.Quick, TestContext.Current.CancellationToken);
            Assert.True(answer is not { } found || found.Bound == found.Price);
            return answer?.Choice;
        }
    }

    [Law(MaxTest = 20)]
    public void On_a_sheet_what_a_term_comes_to_never_rises_with_its_weight(int seed)
    {
        var random = new Random(seed);
        var bars = Sheets[random.Next(Sheets.Length)];
        var (term, with) = Words[random.Next(Words.Length)];
        var light = random.Next(10);
        var heavy = light + random.Next(1, 100);
        Assert.True(ComesTo(bars, term, with, heavy) <= ComesTo(bars, term, with, light));
    }

    // So that the law above does not hold for want of anything to change.
    [Fact]
    public void On_a_sheet_the_voices_do_move_less_when_that_weighs_more() => Assert.Contains(
        Sheets, bars => ComesTo(bars, Words[0].Term, Words[0].With, 60) < ComesTo(bars, Words[0].Term, Words[0].With, 0));

    // What the term comes to at weight 1, in the cheapest choice under some weight: the weights change no list of candidates.
    private static int ComesTo(string[] bars, Term term, Func<Sound, double, Sound> with, int weight)
    {
        var sheet = Priced(weight);
        var found = Assert.IsType<Outcome.Found>(Search.Run(sheet.Prices, SoundRules.Of(sheet.Sound), ProofEffort.Quick, TestContext.Current.CancellationToken));
        Assert.Equal(found.Price, found.Bound);
        return Priced(1).Prices.WholeTerms(found.Choice)[term];

        PricedSheet Priced(int at) => SmallSheets.Priced(SmallSheets.Sheet(bars), Chapel, with(ShippedSounds.Default, at));
    }

    /// <summary>Some prices and so many times others.</summary>
    private sealed class Weighed(TablePrices rest, TablePrices term, int weight) : IChoicePrices
    {
        public int Count => rest.Count;

        public ReadOnlySpan<long> Alone(int slot)
        {
            var prices = rest.Alone(slot).ToArray();
            for (var i = 0; i < prices.Length; i++)
            {
                prices[i] += weight * term.Alone(slot)[i];
            }

            return prices;
        }

        public IReadOnlyList<int> Linked(int slot) => [.. rest.Linked(slot).Union(term.Linked(slot)).Order()];

        public void PairPrices(int slot, int candidate, int other, ReadOnlySpan<int> candidates, Span<long> prices)
        {
            for (var i = 0; i < candidates.Length; i++)
            {
                prices[i] = rest.Pair(slot, candidate, other, candidates[i]) + (weight * term.Pair(slot, candidate, other, candidates[i]));
            }
        }
    }
}
