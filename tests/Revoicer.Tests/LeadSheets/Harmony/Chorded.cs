using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.Harmony;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Harmony;

/// <summary>Finds the chords of short passages, and tells them in short.</summary>
internal static class Chorded
{
    /// <summary>The passage of some voices in ABC, each a line.</summary>
    public static Passage Passage(string head, params string[] voices) => Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage(
        "quay.abc",
        $"X:1\nL:1/4\n{head}\n" + string.Concat(voices.Select((v, i) => $"V:{i + 1}\n{v}\n")),
        SheetChoice.First)).Value;

    /// <summary>"C 2, G7/B 2 | - 4": the chords of a passage bar by bar with their lengths in quarters.</summary>
    public static string Told(FoundHarmony found) => string.Join(" | ", found.Sheet.Bars.Select(bar =>
        string.Join(", ", bar.Chords.Select(c => $"{c.Symbol?.ToString() ?? "-"} {c.Length}"))));

    /// <summary>The chords of a passage.</summary>
    public static string Of(Passage passage) => Told(HarmonyFinding.Of(passage));

    /// <summary>The chords of voices in 4/4 and C major.</summary>
    public static string Of(params string[] voices) => Of(Passage("M:4/4\nK:C", voices));

    /// <summary>A passage without its chord symbols.</summary>
    public static Passage WithoutSymbols(Passage passage) => passage with
    {
        Sheet = passage.Sheet with
        {
            Bars = passage.Sheet.Bars.Select(b => b with { Chords = [new ChordSpan(Beats.Zero, b.Length, null, b.Chords[0].Where)] }).ToItems(),
        },
    };
}
