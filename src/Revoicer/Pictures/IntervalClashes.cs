using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>
/// The clash of two bells struck together and left to ring, for the third and the intervals that can stand for it, over
/// the compass. It is roughness alone: two bells are no chord yet, and the chords in which a sixth or a twelfth would be
/// heard are not those of the third, so a contradiction would compare chords and not intervals.
/// </summary>
/// <param name="Lines">A line for each interval that the tower has there, the closest first; at least one, each with a point.</param>
public sealed record IntervalClashes(Items<IntervalLine> Lines)
{
    private static readonly Items<(string Name, Interval Interval)> Intervals =
    [
        ("major third", new Interval(4)),
        ("major sixth", new Interval(9)),
        ("tenth", new Interval(16)),
        ("twelfth", new Interval(19)),
        ("seventeenth", new Interval(28)),
    ];

    /// <summary>The clash of the intervals above every bell of a stretch of a tower's compass.</summary>
    /// <param name="tower">The tower.</param>
    /// <param name="fade">The fade from attention.</param>
    /// <param name="from">The strike note of the lowest lower bell.</param>
    /// <param name="to">The strike note of the highest lower bell.</param>
    /// <exception cref="ArgumentException">The tower has none of the intervals there.</exception>
    public static IntervalClashes Of(Tower tower, Fade fade, StrikeNote from, StrikeNote to)
    {
        var doses = new TowerDoses(tower, fade);
        var places = Enumerable.Range(0, tower.Bells.Count)
            .Where(b => tower.Bells[b].StrikeNote.CompareTo(from) >= 0 && tower.Bells[b].StrikeNote.CompareTo(to) <= 0)
            .ToArray();
        var lines = Intervals
            .Select(i => new IntervalLine(i.Name, i.Interval, Points(tower, doses, places, i.Interval)))
            .Where(line => line.Points.Count > 0)
            .ToItems();
        return lines.Count > 0
            ? new IntervalClashes(lines)
            : throw new ArgumentException($"{tower.Name} has none of the intervals between {from} and {to}", nameof(from));
    }

    private static Items<IntervalPoint> Points(Tower tower, TowerDoses doses, IEnumerable<int> places, Interval interval)
    {
        var points = new List<IntervalPoint>();
        foreach (var low in places)
        {
            var bell = tower.Bells[low];
            if (BellPlaces.Find(tower, bell.StrikeNote.Midi + interval.Semitones) is { } high)
            {
                points.Add(new IntervalPoint(bell.StrikeNote, bell.Strike, doses.Roughness(low, high, Seconds.Zero)));
            }
        }

        return points.ToItems();
    }
}
