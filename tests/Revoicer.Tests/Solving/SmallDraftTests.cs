using Revoicer.Bells;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Tests.Oracles;
using Revoicer.Tests.Prices;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>Whole drafts on a tower of eight bells, small enough for every choice to be looked at.</summary>
public sealed class SmallDraftTests
{
    // The order in which the bars are heard stands behind the comma. Nothing proves that the rounds end at the optimum;
    // on these sheets they do, and the bound, which knows neighbours only, lies below by what rings farther.
    [Theory]
    [InlineData("C | G7 | C", "0 1 2")]
    [InlineData("Cmaj7 | Em | G7", "0 1 2")]
    [InlineData("Em G7 | C", "0 1")]
    [InlineData("C | G7 | C", "0 1 0 1 2")]
    [InlineData("C/E | Bdim | Em", "0 1 0 1 2")]
    [InlineData("Dm7 G7 | C", "0 0 1")]
    public void The_answer_is_the_cheapest_of_all_choices_that_keep_the_rules(string bars, string heard)
    {
        var sheet = SmallSheets.Priced(
            SmallSheets.Sheet(bars.Split(" | "), [.. heard.Split(' ').Select(int.Parse)]), SmallSheets.EightBells, ShippedSounds.Default);
        var book = RuleBook.For(SoundRules.Of(sheet.Sound), sheet.Prices);

        var answer = Search.Run(sheet.Prices, book.Allowed, book.Counters, ProofEffort.Quick, TestContext.Current.CancellationToken)!.Value;

        var optimum = Optimum(sheet.Prices, book);
        Assert.Equal(sheet.Prices.Whole(answer.Choice), answer.Price);
        Assert.InRange(answer.Bound, 1, optimum);
        Assert.Equal(optimum, answer.Price);
    }

    // Tables and starts are worked out in parallel; sums of whole numbers do not depend on the order.
    [Fact]
    public void Prices_and_search_worked_out_again_give_the_same_answer()
    {
        static Outcome Run()
        {
            var sheet = SmallSheets.Priced(
                SmallSheets.Sheet(["C", "Am7 Dm7", "G7sus4 G7", "C"], [0, 1, 0, 1, 2, 3]), ShippedTowers.Named("chapel-23"), ShippedSounds.Default);
            return Search.Run(sheet.Prices, SoundRules.Of(sheet.Sound), ProofEffort.Quick, TestContext.Current.CancellationToken);
        }

        Assert.Equal(Assert.IsType<Outcome.Found>(Run()), Run());
    }

    // The table numbers the allowed candidates anew.
    private static long Optimum(SheetPrices prices, RuleBook book)
    {
        var table = TablePrices.Copy(prices, book.Allowed);
        int[][] all = [.. book.Allowed.Select(slot => Enumerable.Range(0, slot.Length).ToArray())];
        return BruteForce.Least(
            all,
            choice => book.Counters.AreKept([.. choice.Select((place, slot) => book.Allowed[slot][place])]),
            table.Price)!.Value;
    }
}
