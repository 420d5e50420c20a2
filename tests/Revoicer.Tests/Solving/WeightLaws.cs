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

    // In thousandths: prices of at most three slots and three pairs are each rounded, at both weights, and to count what comes of it.
    private const long Rounding = 24;

    // Weights that multiply what they weigh; all of them move something on these sheets.
    private static readonly Dictionary<string, Func<Sound, double, Sound>> Weights = new()
    {
        ["voice leading"] = (sound, weight) => sound with { VoiceLeading = weight },
        ["doubled tones"] = (sound, weight) => sound with { Doubled = weight },
        ["missing fifth"] = (sound, weight) => sound with { MissingFifth = weight },
        ["carry"] = (sound, weight) => sound with { CarryShortfall = weight },
        ["bass height"] = (sound, weight) => sound with { BassHeight = weight },
        ["rolled"] = (sound, weight) => sound with { Rolled = weight },
    };

    public static TheoryData<string> Names => [.. Weights.Keys];

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
    public void On_a_sheet_what_a_weight_weighs_never_rises_with_it(int seed)
    {
        var random = new Random(seed);
        var bars = Sheets[random.Next(Sheets.Length)];
        var with = Weights.Values.ElementAt(random.Next(Weights.Count));
        var light = random.Next(10);
        var heavy = light + random.Next(1, 100);
        Assert.True(ComesTo(bars, with, heavy) <= ComesTo(bars, with, light) + Rounding);
    }

    // So that the law above does not hold for want of anything to change.
    [Theory]
    [MemberData(nameof(Names))]
    public void On_a_sheet_what_a_weight_weighs_does_get_less_when_it_weighs_more(string name) => Assert.Contains(
        Sheets, bars => ComesTo(bars, Weights[name], 60) < ComesTo(bars, Weights[name], 0) - Rounding);

    // What the weight is multiplied by, in the cheapest choice under it: the weights change no list of candidates.
    private static long ComesTo(string[] bars, Func<Sound, double, Sound> with, int weight)
    {
        var sheet = Priced(weight);
        var found = Assert.IsType<Outcome.Found>(Search.Run(sheet.Prices, SoundRules.Of(sheet.Sound), ProofEffort.Quick, TestContext.Current.CancellationToken));
        Assert.Equal(found.Price, found.Bound);
        return Priced(1).Prices.WholeTerms(found.Choice).Sum() - Priced(0).Prices.WholeTerms(found.Choice).Sum();

        PricedSheet Priced(int at) => SmallSheets.Priced(SmallSheets.Sheet(bars), Chapel, with(ShippedSounds.Default with { BassFirst = 20, Afterbeats = 20, Broken = 25 }, at));
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
