using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>Writes what a voice has in a bar as note values: rests filled in, ties, dots, tuplets, beams.</summary>
internal sealed class BarRhythm
{
    private readonly ArrangedBar _bar;
    private readonly MetricGrid _grid;
    private readonly List<ScorePiece> _pieces = [];

    private BarRhythm(ArrangedBar bar) => (_bar, _grid) = (bar, new MetricGrid(bar.Meter));

    /// <summary>The signs of the bar in order; they fill it.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="notes">The voice's notes that sound in it, in order; they do not overlap.</param>
    public static IReadOnlyList<ScorePiece> Of(ArrangedBar bar, IEnumerable<VoiceNote> notes)
    {
        var rhythm = new BarRhythm(bar);
        var segments = rhythm.Segments(notes);
        if (segments is [{ Note: null }])
        {
            return [new ScorePiece(Beats.Zero, bar.Length, null, null) { IsBarRest = true }];
        }

        rhythm.Write(segments);
        return BeamGroups.Over(rhythm._pieces, bar);
    }

    // Notes and the rests between them, in places of the metre's bar.
    private List<Segment> Segments(IEnumerable<VoiceNote> notes)
    {
        var segments = new List<Segment>();
        var at = _bar.Offset;
        var end = _bar.Offset + _bar.Length;
        foreach (var note in notes)
        {
            var start = note.Start < _bar.Start ? _bar.Offset : note.Start - _bar.Start + _bar.Offset;
            var until = note.End - _bar.Start + _bar.Offset;
            if (start > at)
            {
                segments.Add(new Segment(at, start, null, false, false));
            }

            at = until < end ? until : end;
            segments.Add(new Segment(start, at, note, note.Start < _bar.Start, until > end));
        }

        if (at < end)
        {
            segments.Add(new Segment(at, end, null, false, false));
        }

        return segments;
    }

    private void Write(List<Segment> segments)
    {
        var end = _bar.Offset + _bar.Length;
        var tuplets = TupletSearch.In(_grid, _bar.Offset, end, [.. segments.Select(s => (s.Start, s.End))]);
        var at = _bar.Offset;
        foreach (var tuplet in tuplets)
        {
            Plain(segments, at, tuplet.Start);
            Within(segments, tuplet);
            at = tuplet.End;
        }

        Plain(segments, at, end);
    }

    private static IEnumerable<Segment> Cut(IEnumerable<Segment> segments, Beats from, Beats to) => segments
        .Where(s => from < to && s.Start < to && s.End > from)
        .Select(s => s with
        {
            Start = s.Start < from ? from : s.Start,
            End = s.End > to ? to : s.End,
            IsTiedBack = s.Note is not null && (s.IsTiedBack || s.Start < from),
            IsTiedOn = s.Note is not null && (s.IsTiedOn || s.End > to),
        });

    private void Plain(List<Segment> segments, Beats from, Beats to)
    {
        foreach (var segment in Cut(segments, from, to))
        {
            Plain(segment);
        }
    }

    // As one value if it may stand there, else in two parts at the heaviest place inside. The first part is one value, or has none so heavy,
    // so the depth is bounded however long the bar is.
    private void Plain(Segment segment)
    {
        while (true)
        {
            var place = _grid.HeaviestBetween(segment.Start, segment.End);
            var value = NoteValue.Of(segment.End - segment.Start);
            if (place is not { } middle || (value is not null && MayCross(segment, middle)))
            {
                Add(segment, value, null);
                return;
            }

            var parted = LatestPart(segment, middle);
            Plain(segment with { End = parted, IsTiedOn = segment.Note is not null });
            segment = segment with { Start = parted, IsTiedBack = segment.Note is not null };
        }
    }

    // Of several places of one weight the latest before which one value can stand: in 3/4 five eighths are a half and an
    // eighth.
    private Beats LatestPart(Segment segment, Beats first)
    {
        const int mostPlaces = 8;
        var unit = _grid.UnitAt(first);
        var latest = first;
        var place = first + unit;
        for (var i = 1; i < mostPlaces && place < segment.End; i++, place += unit)
        {
            var part = segment with { End = place };
            latest = NoteValue.Of(place - segment.Start) is not null && MayCross(part, first) ? place : latest;
        }

        return latest;
    }

    // A note may hide a place that is at most twice as heavy as where it begins and ends, a rest only what lies within a
    // unit of its own. Common practice.
    private bool MayCross(Segment segment, Beats place)
    {
        var isWhole = segment.Start == Beats.Zero && segment.End == _grid.Unit(0);
        if (segment.Note is null)
        {
            return isWhole || (_grid.IsUnit(segment.End - segment.Start) && _grid.UnitAt(segment.Start) >= segment.End - segment.Start);
        }

        var (starts, ends, hidden) = (_grid.UnitAt(segment.Start), _grid.UnitAt(segment.End), _grid.UnitAt(place));
        return isWhole || hidden <= (starts < ends ? starts : ends) * 2;
    }

    // Counted in the tuplet's own values, its notes are binary again.
    private void Within(List<Segment> segments, TupletSpan span)
    {
        var type = NoteValue.Of((span.End - span.Start) / span.Normal)?.Type;
        var tuplet = type is null ? null : new Tuplet(span.Actual, span.Normal, type);
        var first = _pieces.Count;
        foreach (var segment in Cut(segments, span.Start, span.End))
        {
            var rest = segment;
            while (rest.Start < rest.End)
            {
                var nominal = (rest.End - rest.Start) * span.Actual / span.Normal;
                var value = NoteValue.Of(nominal);
                var taken = value is null ? NoteValue.LongestWithin(nominal) : nominal;
                var end = rest.Start + (taken * span.Normal / span.Actual);
                var isLast = end >= rest.End;
                Add(rest with { End = isLast ? rest.End : end, IsTiedOn = segment.Note is not null && (segment.IsTiedOn || !isLast) }, isLast ? value : NoteValue.Of(taken), tuplet);
                rest = rest with { Start = isLast ? rest.End : end, IsTiedBack = segment.Note is not null };
            }
        }

        if (tuplet is not null)
        {
            _pieces[first] = _pieces[first] with { BeginsTuplet = true };
            _pieces[^1] = _pieces[^1] with { EndsTuplet = true };
        }
    }

    private void Add(Segment segment, NoteValue? value, Tuplet? tuplet) =>
        _pieces.Add(new ScorePiece(segment.Start - _bar.Offset, segment.End - _bar.Offset, segment.Note, value)
        {
            Tuplet = value is null ? null : tuplet,
            IsTiedBack = segment.IsTiedBack,
            IsTiedOn = segment.IsTiedOn,
        });

    private sealed record Segment(Beats Start, Beats End, VoiceNote? Note, bool IsTiedBack, bool IsTiedOn);
}
