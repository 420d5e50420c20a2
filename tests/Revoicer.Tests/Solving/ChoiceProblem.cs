using Revoicer.Solving;
using Revoicer.Tests.Oracles;

namespace Revoicer.Tests.Solving;

/// <summary>A small problem in plain arrays: prices, what is allowed, phrases, counting rules, and a background.</summary>
public sealed class ChoiceProblem
{
    private readonly string _name;

    internal ChoiceProblem(string name, TablePrices prices, int[][] allowed, int[] phraseOfSlot, Counter[] rules, long[][] background)
    {
        _name = name;
        Prices = prices;
        Near = prices.NeighboursOnly();
        Allowed = allowed;
        PhraseOfSlot = phraseOfSlot;
        Rules = rules;
        Background = background;
        Counters = new Counters(phraseOfSlot, rules);
        NoCounters = new Counters(phraseOfSlot, []);
    }

    internal TablePrices Prices { get; }

    /// <summary>The same prices, only pairs of neighbours left.</summary>
    internal TablePrices Near { get; }

    internal int[][] Allowed { get; }

    internal int[] PhraseOfSlot { get; }

    internal Counter[] Rules { get; }

    /// <summary>For each slot a price on each allowed candidate.</summary>
    internal long[][] Background { get; }

    internal Counters Counters { get; }

    internal Counters NoCounters { get; }

    /// <summary>Whether a choice keeps the counting rules, by counting.</summary>
    internal bool IsKept(int[] choice) => Rules.All(rule => rule.Most.Index().All(most =>
        Enumerable.Range(0, choice.Length).Where(s => PhraseOfSlot[s] == most.Index).Sum(s => rule.Counts[s][choice[s]]) <= most.Item));

    internal bool IsAllowed(int[] choice) => choice.Index().All(c => Allowed[c.Index].Contains(c.Item));

    internal long BackgroundOf(int[] choice) => choice.Index().Sum(c => Background[c.Index][Array.IndexOf(Allowed[c.Index], c.Item)]);

    /// <summary>The least price of any choice that keeps the rules; null where none does.</summary>
    internal long? Optimum() => BruteForce.Least(Allowed, IsKept, Prices.Price);

    /// <inheritdoc/>
    public override string ToString() => _name;
}
