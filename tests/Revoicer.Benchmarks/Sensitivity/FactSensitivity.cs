using System.Globalization;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Tests.Clashes;
using Revoicer.Values;

namespace Revoicer.Benchmarks.Sensitivity;

/// <summary>
/// Prints, as a table for docs/clash-model.md, how often each fact of the trade holds when the default bell is changed within
/// what is not known of it, and whether it holds under other fades. A draw keeps a fact where it holds at every bell of its
/// register; in brackets the share of all draws and bells at which it holds. The letters are those of <see cref="BellDraws"/>.
/// </summary>
internal static class FactSensitivity
{
    private const int Draws = 400;
    private const double Robust = 0.9;

    private static readonly (string Words, Fade Fade)[] Fades =
    [
        ("no fade", Fade.None), ("0.6 s", Fade.Of(new Seconds(0.6))), ("2.4 s", Fade.Of(new Seconds(2.4))),
    ];

    public static int Print()
    {
        Console.WriteLine($"| a fact of the trade | {string.Join(" | ", BellDraws.All.Select(d => d.Letter))} | {string.Join(" | ", Fades.Select(f => f.Words))} | |");
        Console.WriteLine($"|---|{string.Concat(Enumerable.Repeat("---|", BellDraws.All.Length + Fades.Length + 1))}");
        (double Draws, double Bells)[][] shares = [.. BellDraws.All.Select(Shares)];
        double[][] underFades = [.. Fades.Select(f => Holding(new FactBells(Wide, f.Fade)))];
        for (var fact = 0; fact < TradeFact.All.Length; fact++)
        {
            var cells = shares.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s[fact].Draws:0.00} ({s[fact].Bells:0.00})"))
                .Concat(underFades.Select(f => f[fact] == 1 ? "holds" : string.Create(CultureInfo.InvariantCulture, $"fails ({f[fact]:0.00})")));
            var verdict = shares.All(s => s[fact].Draws >= Robust) && underFades.All(f => f[fact] == 1) ? "robust" : "fragile";
            Console.WriteLine($"| {TradeFact.All[fact].Words} | {string.Join(" | ", cells)} | {verdict} |");
        }

        return 0;
    }

    // For each fact the share of draws that keep it at every bell, and that of draws and bells that keep it.
    private static (double Draws, double Bells)[] Shares(BellDraws draws)
    {
        var kept = draws.Laws(Draws).ToArray().AsParallel().AsOrdered()
            .Select(law => Holding(new FactBells(Wide.Under(law), Fade.Default)))
            .ToArray();
        return [.. TradeFact.All.Select((_, fact) => (kept.Count(k => k[fact] == 1) / (double)Draws, kept.Average(k => k[fact])))];
    }

    // For each fact the share of the bells of its register at which it holds.
    private static double[] Holding(FactBells bells) =>
        [.. TradeFact.All.Select(fact => fact.Places(bells).Average(n => fact.HoldsAt(bells, n) ? 1.0 : 0))];

    // Default bells from strike B2, an octave below which no fact reaches, to E8.
    private static Tower Wide { get; } = new(
        "default bells",
        Enumerable.Range(47, 66).Select(StrikeNote.AtMidi)
            .Select(n => BellLaw.Default.BellAt(WrittenNote.AtMidi(n.Midi - 12), n, Tuning.Concert.Of(n), Decibels.Zero))
            .ToItems(),
        WrittenNote.AtMidi(35),
        WrittenNote.AtMidi(55),
        new Transposition(12),
        []);
}
