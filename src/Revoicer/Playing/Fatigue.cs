using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>
/// How tiring the heavy strokes of a piece are, on bells below written middle C: a level that each fills by one and that
/// drains with a time constant of 10 s, so that in the long run it is the number of such strokes in 10 s; and the longest row
/// of them that one foot has without a rest. Where it tires and where it is too much are rows of playing-limits.tsv, common
/// practice; the draining is an estimate. It tells; what a phrase may have is a rule of the search.
/// </summary>
/// <param name="Level">The highest level.</param>
/// <param name="LevelAt">When it is reached.</param>
/// <param name="Tires">The level from which it tires (heavy_strokes_in_10_s, soft).</param>
/// <param name="TooMuch">The level that is too much (heavy_strokes_in_10_s, hard).</param>
/// <param name="Row">The most heavy strokes of one foot without a rest of 2 s between two of them.</param>
/// <param name="RowAt">When that row begins.</param>
/// <param name="RowTires">The row from which it tires (heavy_strokes_one_foot_no_rest, soft).</param>
public sealed record Fatigue(double Level, Seconds LevelAt, double Tires, double TooMuch, int Row, Seconds RowAt, double RowTires)
{
    // "In 10 s" and "rest = 2 s" of those rows.
    private static readonly Seconds Drain = new(10);
    private static readonly Seconds Rest = new(2);
    private const int MiddleC = 60;

    /// <summary>That of no stroke under the limits as shipped.</summary>
    public static Fatigue None { get; } = Of([], PlayingLimits.Shipped);

    /// <summary>That of some strokes, the tune's among them.</summary>
    public static Fatigue Of(IEnumerable<Stroke> strokes, PlayingLimits limits)
    {
        Stroke[] heavy = [.. strokes.Where(s => s.Note.Midi < MiddleC).OrderBy(s => s.At.Value)];
        var (level, highest, highestAt) = (0.0, 0.0, Seconds.Zero);
        for (var i = 0; i < heavy.Length; i++)
        {
            level = 1 + (i == 0 ? 0 : level * Math.Exp(-(heavy[i].At - heavy[i - 1].At).Value / Drain.Value));
            (highest, highestAt) = level > highest ? (level, heavy[i].At) : (highest, highestAt);
        }

        var (row, rowAt) = new[] { Limb.LeftFoot, Limb.RightFoot }
            .Select(foot => LongestRow([.. heavy.Where(s => s.Limb == foot).Select(s => s.At)]))
            .MaxBy(r => r.Row);
        return new Fatigue(
            highest,
            highestAt,
            limits.Soft("heavy_strokes_in_10_s"),
            limits.Hard("heavy_strokes_in_10_s"),
            row,
            rowAt,
            limits.Soft("heavy_strokes_one_foot_no_rest"));
    }

    private static (int Row, Seconds From) LongestRow(Seconds[] at)
    {
        var (longest, start) = ((Row: 0, From: Seconds.Zero), 0);
        for (var i = 0; i < at.Length; i++)
        {
            start = i > 0 && (at[i] - at[i - 1]).Value >= Rest.Value ? i : start;
            longest = i - start + 1 > longest.Row ? (i - start + 1, at[start]) : longest;
        }

        return longest;
    }
}
