using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using Revoicer.Solving;
using Revoicer.Tests.Oracles;

namespace Revoicer.Tests.Solving;

/// <summary>Generators of problems small enough for every choice to be looked at.</summary>
internal static class ProblemGens
{
    public static Arbitrary<ChoiceProblem> Problems() =>
        Gen.Choose(0, int.MaxValue - 1).Select(Problem).ToArbitrary();

    /// <summary>
    /// Two to six slots of one to four candidates, links near and far or missing, up to three phrases, up to two counting
    /// rules that often bite. Prices are small, so that many choices cost the same, and now and then forbiddingly dear.
    /// </summary>
    public static ChoiceProblem Problem(int seed)
    {
        var random = new Random(seed);
        var sizes = Enumerable.Range(0, random.Next(2, 7)).Select(_ => random.Next(1, 5)).ToArray();
        var allowed = sizes.Select(size => Allowed(random, size)).ToArray();
        var phrases = Phrases(random, sizes.Length);
        return new ChoiceProblem(
            string.Create(CultureInfo.InvariantCulture, $"problem {seed}"),
            Prices(random, sizes, distance => distance == 1 ? 0.8 : 0.4),
            allowed,
            phrases,
            [.. Enumerable.Range(0, random.Next(3)).Select(_ => Rule(random, sizes, phrases))],
            [.. allowed.Select(slot => slot.Select(_ => (long)random.Next(10)).ToArray())]);
    }

    /// <summary>
    /// Fourteen slots of seven candidates with links up to five slots away, three phrases and two rules that bite: too many
    /// choices to look at all.
    /// </summary>
    public static ChoiceProblem Larger(int seed)
    {
        var random = new Random(seed);
        int[] sizes = [.. Enumerable.Repeat(7, 14)];
        int[][] allowed = [.. sizes.Select(size => Enumerable.Range(0, size).ToArray())];
        int[] phrases = [.. Enumerable.Range(0, 14).Select(s => s / 5)];
        return new ChoiceProblem(
            string.Create(CultureInfo.InvariantCulture, $"larger problem {seed}"),
            Prices(random, sizes, distance => distance <= 5 ? 1 : 0, dearest: 400, dearestPair: 160),
            allowed,
            phrases,
            [Rule(random, sizes, phrases, atLeast: 1), Rule(random, sizes, phrases, atLeast: 1)],
            [.. allowed.Select(slot => slot.Select(_ => 0L).ToArray())]);
    }

    /// <summary>Random prices; pairs of slots are linked with a probability that depends on their distance.</summary>
    public static TablePrices Prices(Random random, int[] sizes, Func<int, double> linked, int dearest = 20, int dearestPair = 20)
    {
        var pairs = new Dictionary<(int, int), long[,]>();
        for (var later = 1; later < sizes.Length; later++)
        {
            for (var earlier = 0; earlier < later; earlier++)
            {
                if (random.NextDouble() < linked(later - earlier))
                {
                    pairs[(earlier, later)] = Table(random, sizes[earlier], sizes[later], dearestPair);
                }
            }
        }

        return new TablePrices([.. sizes.Select(size => Enumerable.Range(0, size).Select(_ => Price(random, dearest)).ToArray())], pairs);
    }

    private static long[,] Table(Random random, int rows, int columns, int dearest)
    {
        var table = new long[rows, columns];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                table[row, column] = Price(random, dearest);
            }
        }

        return table;
    }

    private static long Price(Random random, int dearest) =>
        random.Next(20) == 0 ? Revoicer.Prices.Thousandths.Forbidden : random.Next(dearest);

    private static int[] Allowed(Random random, int size)
    {
        var some = Enumerable.Range(0, size).Where(_ => random.Next(4) > 0).ToArray();
        return some.Length > 0 ? some : [random.Next(size)];
    }

    // Rising; a phrase may hold no slot, as where its bars have no chord.
    private static int[] Phrases(Random random, int slots)
    {
        var phrases = new int[slots];
        for (var slot = 1; slot < slots; slot++)
        {
            phrases[slot] = phrases[slot - 1] + (random.Next(3) == 0 ? random.Next(1, 3) : 0);
        }

        return phrases;
    }

    private static Counter Rule(Random random, int[] sizes, int[] phrases, int atLeast = 0) => new(
        [.. sizes.Select(size => Enumerable.Range(0, size).Select(_ => Math.Max(0, random.Next(4) - 1)).ToArray())],
        [.. Enumerable.Range(0, phrases[^1] + 1).Select(_ => atLeast + random.Next(3))]);
}
