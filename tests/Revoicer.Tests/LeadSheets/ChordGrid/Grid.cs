using Revoicer.LeadSheets;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.ChordGrid;

/// <summary>Reads grids from text.</summary>
internal static class Grid
{
    public static Reading<LeadSheet> Read(string text) => ChordGridReader.Read("quay.chords", text);

    public static LeadSheet Sheet(string text) => Assert.IsType<Reading<LeadSheet>.Accepted>(Read(text)).Value;

    /// <summary>Bars in the given time without any other head.</summary>
    public static LeadSheet Bars(string time, string bars) => Sheet($"time: {time}\n{bars}\n");

    public static string Messages(string text) => string.Concat(Read(text) switch
    {
        Reading<LeadSheet>.Refused refused => refused.Problems,
        Reading<LeadSheet>.Accepted accepted => accepted.Warnings,
        _ => [],
    });

    /// <summary>The bars as heard by their numbers, with the pass from the second on: "1 2 1(2) 2(2)".</summary>
    public static string Heard(string bars)
    {
        var sheet = Bars("4/4", bars);
        return string.Join(' ', sheet.Played.Select(p => sheet.Bars[p.Written].Number + (p.Pass > 1 ? $"({p.Pass})" : "")));
    }

    /// <summary>A bar's chords with length and start in quarters: "C 2 at 0, G7 2 at 2".</summary>
    public static string Spans(WrittenBar bar) =>
        string.Join(", ", bar.Chords.Select(c => $"{c.Symbol?.ToString() ?? "N.C."} {c.Length} at {c.Start}"));
}
