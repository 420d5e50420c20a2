using System.Globalization;
using Revoicer.Arrangements;

namespace Revoicer.Audits;

/// <summary>What an arrangement's file says of its clash, held against what its strokes come to.</summary>
internal static class StoredFigures
{
    // What is shown to a decimal differs where this much does; rounding is far smaller.
    private const double Shown = 0.05;
    private const double OfItself = 0.001;

    private const int ChordsNamed = 3;

    /// <summary>A sentence for each figure that differs; of chords the first few.</summary>
    /// <param name="made">The arrangement, for the tower and in the sound of the report.</param>
    /// <param name="found">The report of its strokes.</param>
    public static IEnumerable<string> Told(Arrangement made, AuditReport found)
    {
        var totals = new (string Name, double Said, double Is)[]
        {
            ("a clash dose", made.Totals.ClashDose, found.Totals.ClashDose),
            ("a clash dose of the tune with itself", made.Totals.TuneDose, found.Totals.TuneDose),
            ("a median clash", made.Totals.MedianClash, found.Totals.MedianClash),
            ("a carry in dB", made.Totals.Carry.Value, found.Totals.Carry.Value),
            ("a brightness in Hz", made.Totals.Brightness.Value, found.Totals.Brightness.Value),
            ("a count of heavy strokes", made.Totals.HeaviestStrokes, found.Totals.HeaviestStrokes),
        };
        foreach (var (name, said, isSo) in totals.Where(t => Differ(t.Said, t.Is)))
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"its file says {name} of {said:0.0}, but its strokes come to {isSo:0.0}");
        }

        var chords = made.Choices.Zip(found.Chords)
            .Where(c => Differ(c.First.Clash.Avoidable, c.Second.Clash.Avoidable) || Differ(c.First.Clash.Whole, c.Second.Clash.Whole) || Differ(c.First.Dose, c.Second.Dose))
            .ToArray();
        foreach (var (said, isSo) in chords.Take(ChordsNamed))
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"its file says of bar {said.Bar} beat {said.Beat:0.##} a clash of {said.Clash.Avoidable:0.0} and a dose of {said.Dose:0.0}, but its strokes come to {isSo.Clash.Avoidable:0.0} and {isSo.Dose:0.0}");
        }

        if (chords.Length > ChordsNamed)
        {
            yield return $"its file says other figures than its strokes come to of {chords.Length - ChordsNamed} more chords";
        }
    }

    private static bool Differ(double said, double isSo) => Math.Abs(said - isSo) > Shown + (OfItself * Math.Abs(isSo));
}
