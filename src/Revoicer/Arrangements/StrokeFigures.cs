using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>Figures and heads that every report of played strokes shares.</summary>
internal static class StrokeFigures
{
    private static readonly Seconds HeavyPassage = new(10);
    private const int HeavyBelow = 60;

    /// <summary>What a report says of a tower.</summary>
    public static TowerSummary SummaryOf(Tower tower) => new(
        tower.Name,
        tower.Bells.Count,
        tower.Bells[0].Note,
        tower.Bells[^1].Note,
        tower.Missing.ToItems(),
        tower.Bells.Count(b => b.IsMeasured),
        tower.Transposition);

    /// <summary>The bars of a sheet as heard.</summary>
    public static Items<ArrangedBar> BarsOf(LeadSheet sheet) => sheet.Played.Select(p => ToBar(sheet.Bars[p.Written], p)).ToItems();

    /// <summary>Where the 10 s with most strokes on heavy bells (written below middle C) begin, and how many these are.</summary>
    public static (Seconds From, int Strokes) HeaviestPassage(Items<Stroke> strokes)
    {
        Seconds[] heavy = [.. strokes.Where(s => s.Note.Midi < HeavyBelow).Select(s => s.At).Order()];
        var most = (From: Seconds.Zero, Strokes: 0);
        for (var (first, end) = (0, 0); first < heavy.Length; first++)
        {
            while (end < heavy.Length && heavy[end] < heavy[first] + HeavyPassage)
            {
                end++;
            }

            most = end - first > most.Strokes ? (heavy[first], end - first) : most;
        }

        return most;
    }

    /// <summary>The median of some figures; at least one.</summary>
    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    private static ArrangedBar ToBar(WrittenBar bar, PlayedBar played) => new(bar.Number, played.Pass, played.Start, bar.Length, bar.Meter)
    {
        Written = played.Written,
        Offset = bar.Offset,
        EndsSection = bar.EndsSection,
        Key = bar.Key,
        Fermatas = bar.Fermatas,
    };
}
