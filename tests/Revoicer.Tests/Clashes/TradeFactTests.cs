using Revoicer.Bells;
using Revoicer.Clashes;
using Xunit;

namespace Revoicer.Tests.Clashes;

/// <summary>The facts of the trade (common practice) on the towers that have the bells they speak of.</summary>
public sealed class TradeFactTests
{
    private static readonly string[] Towers = ["harbour-47", "lighthouse-49", "great-56"];

    private static readonly Dictionary<string, FactBells> Bells =
        Towers.ToDictionary(name => name, name => new FactBells(ShippedTowers.Named(name), Fade.Default));

    public static TheoryData<int, string> FactsOnTowers()
    {
        var rows = new TheoryData<int, string>();
        foreach (var tower in Towers)
        {
            for (var fact = 0; fact < TradeFact.All.Length; fact++)
            {
                if (TradeFact.All[fact].Places(Bells[tower]).Any())
                {
                    rows.Add(fact, tower);
                }
            }
        }

        return rows;
    }

    // The third an octave below a bass root: strike notes below middle C, which only the larger two have.
    [Fact]
    public void Only_one_fact_needs_bells_that_the_smallest_of_them_lacks() =>
        Assert.Equal((3 * TradeFact.All.Length) - 1, FactsOnTowers().Count);

    [Theory]
    [MemberData(nameof(FactsOnTowers))]
    public void A_fact_of_the_trade_holds_on_a_tower_at_every_bell_of_its_register(int number, string tower)
    {
        var fact = TradeFact.All[number];
        int[] fails = [.. fact.Places(Bells[tower]).Where(n => !fact.HoldsAt(Bells[tower], n))];
        Assert.True(fails.Length == 0, $"{fact} is false at strike notes {string.Join(", ", fails)}");
    }
}
