using System.Numerics;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>A stretch of a bar that is written as a tuplet, in places of the metre's bar.</summary>
internal sealed record TupletSpan(Beats Start, Beats End, int Actual, int Normal);

/// <summary>
/// Finds which stretches of a bar take tuplets: the smallest units of the metre in which all notes that fall between the
/// binary places begin and end, but no smaller than a beat where a note lies across its middle.
/// </summary>
internal sealed class TupletSearch
{
    private const int LargestActual = 99;

    private readonly MetricGrid _grid;
    private readonly Beats _from;
    private readonly Beats _to;
    private readonly IReadOnlyList<(Beats Start, Beats End)> _segments;
    private readonly List<TupletSpan> _found = [];

    private TupletSearch(MetricGrid grid, Beats from, Beats to, IReadOnlyList<(Beats Start, Beats End)> segments) =>
        (_grid, _from, _to, _segments) = (grid, from, to, segments);

    /// <summary>The tuplets in order.</summary>
    /// <param name="grid">The metre's places.</param>
    /// <param name="from">Where the bar begins within its metre.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="segments">What the voice has there, notes and rests, without gaps.</param>
    public static IReadOnlyList<TupletSpan> In(MetricGrid grid, Beats from, Beats to, IReadOnlyList<(Beats Start, Beats End)> segments)
    {
        var search = new TupletSearch(grid, from, to, segments);
        for (var start = Beats.Zero; start < to; start += grid.Unit(0))
        {
            search.Look(start, 0);
        }

        return search._found;
    }

    private void Look(Beats start, int level)
    {
        var end = start + _grid.Unit(level);
        var inside = _segments.SelectMany(s => new[] { s.Start, s.End }).Where(t => t > start && t < end).Distinct().ToArray();
        if (!inside.Any(IsOdd) || level + 1 == _grid.Levels)
        {
            return;
        }

        var isWhole = start >= _from && end <= _to;
        if (isWhole && NeedsTupletHere(start, end, level) && Span(start, end, inside) is { } span)
        {
            _found.Add(span);
            return;
        }

        for (var child = start; child < end; child += _grid.Unit(level + 1))
        {
            Look(child, level + 1);
        }
    }

    // Above the beat a note may be tied over a line unless both its ends are odd; within the beat one odd end is enough.
    private bool NeedsTupletHere(Beats start, Beats end, int level)
    {
        var unit = _grid.Unit(level + 1);
        for (var line = start + unit; line < end; line += unit)
        {
            foreach (var segment in _segments.Where(s => s.Start < line && s.End > line))
            {
                var startIsOdd = segment.Start > start && IsOdd(segment.Start);
                var endIsOdd = segment.End < end && IsOdd(segment.End);
                if (level < _grid.BeatLevel ? startIsOdd && endIsOdd : startIsOdd || endIsOdd)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static TupletSpan? Span(Beats start, Beats end, Beats[] inside)
    {
        var length = end - start;
        var common = BigInteger.One;
        foreach (var place in inside.Select(t => Share(t - start, length)))
        {
            common *= place.Denominator / BigInteger.GreatestCommonDivisor(common, place.Denominator);
        }

        while (common.IsEven)
        {
            common /= 2;
        }

        if (common > LargestActual)
        {
            return null;
        }

        var normal = OddPart(length.Numerator);
        while (normal * 2 <= (long)common)
        {
            normal *= 2;
        }

        return normal > LargestActual ? null : new TupletSpan(start, end, (int)common, (int)normal);
    }

    // A part of a length as a fraction of it.
    private static Beats Share(Beats part, Beats length) => Beats.OfQuarters(part.Numerator, part.Denominator) * length.Denominator / length.Numerator;

    private static long OddPart(long number)
    {
        while (number % 2 == 0)
        {
            number /= 2;
        }

        return number;
    }

    private static bool IsOdd(Beats place) => !BitOperations.IsPow2(place.Denominator);
}
