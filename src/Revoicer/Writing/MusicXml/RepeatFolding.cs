using Revoicer.Arrangements;
using Revoicer.Values;

namespace Revoicer.Writing.MusicXml;

/// <summary>
/// Folds the bars as heard into the bars as written, with repeats and endings. Bars are one on paper only where the sheet
/// has one bar and all that is struck and said in it is alike; where a later time differs it gets an ending of its own, and
/// what no repeat can say is written out.
/// </summary>
internal sealed class RepeatFolding
{
    private readonly IReadOnlyList<ArrangedBar> _bars;
    private readonly IReadOnlyList<int> _contents;
    private readonly List<PaperBar> _paper = [];

    private RepeatFolding(IReadOnlyList<ArrangedBar> bars, IReadOnlyList<int> contents) => (_bars, _contents) = (bars, contents);

    /// <summary>The bars on paper.</summary>
    /// <param name="bars">The bars as heard.</param>
    /// <param name="contents">For each a number that is the same where what stands in it is the same.</param>
    public static IReadOnlyList<PaperBar> Of(IReadOnlyList<ArrangedBar> bars, IReadOnlyList<int> contents)
    {
        var folding = new RepeatFolding(bars, contents);
        for (var at = 0; at < bars.Count;)
        {
            at = folding.Next(at);
        }

        // One line stands between two bars: where a repeat begins it says more than the double bar before it.
        return [.. folding._paper.Select((bar, i) => bar with { EndsSection = bar.Bar.EndsSection && folding._paper.ElementAtOrDefault(i + 1)?.OpensRepeat != true })];
    }

    // Writes up to the next repeat and the repeat itself; gives the first bar that is not yet written.
    private int Next(int at)
    {
        var jump = JumpAfter(at);
        var start = jump < _bars.Count ? Enumerable.Range(at, jump - at).FirstOrDefault(i => _contents[i] == _contents[jump], -1) : -1;
        if (start < 0)
        {
            Write(at, jump);
            return jump;
        }

        Write(at, start);
        var passes = Passes(start, jump);
        return WriteRepeat(passes) ?? WriteRepeat(passes[..2]) ?? throw new InvalidOperationException("two times through can always be folded");
    }

    // The bar to which the sheet goes back after a bar, or the end.
    private int JumpAfter(int at)
    {
        var jump = at + 1;
        while (jump < _bars.Count && _bars[jump].Written > _bars[jump - 1].Written)
        {
            jump++;
        }

        return Math.Min(jump, _bars.Count);
    }

    private List<Range> Passes(int start, int jump)
    {
        var passes = new List<Range> { start..jump };
        while (jump < _bars.Count && _contents[jump] == _contents[start])
        {
            var next = JumpAfter(jump);
            passes.Add(jump..next);
            jump = next;
        }

        return passes;
    }

    private int? WriteRepeat(List<Range> passes)
    {
        var (first, length) = (passes[0].Start.Value, Length(passes[0]));
        var common = passes.Skip(1).Min(p => Common(first, p));
        if (common == length)
        {
            if (passes[..^1].Any(p => Length(p) != length))
            {
                return null;
            }

            Write(first, first + length);
            Mark(_paper.Count - length, b => b with { OpensRepeat = true });
            Mark(_paper.Count - 1, b => b with { Times = passes.Count });
            return passes[^1].Start.Value + length;
        }

        return passes[..^1].Any(p => Length(p) <= common) ? null : WriteEndings(passes, common);
    }

    private int WriteEndings(List<Range> passes, int common)
    {
        var first = passes[0].Start.Value;
        Write(first, first + common);
        Mark(_paper.Count - common, b => b with { OpensRepeat = true });
        for (var pass = 0; pass < passes.Count - 1;)
        {
            var same = pass + 1;
            while (same < passes.Count - 1 && Contents(passes[same]).SequenceEqual(Contents(passes[pass])))
            {
                same++;
            }

            var times = Enumerable.Range(pass + 1, same - pass).ToItems();
            WriteEnding(passes[pass].Start.Value + common, passes[pass].End.Value, times);
            Mark(_paper.Count - 1, b => b with { Times = times.Count + 1 });
            pass = same;
        }

        return WriteLastEnding(passes[^1], common, Length(passes[0]) - common, passes.Count);
    }

    // The last ending has no sign at its end: it lasts as long as the first, or to the next double bar.
    private int WriteLastEnding(Range pass, int common, int asLongAs, int time)
    {
        var start = pass.Start.Value + common;
        var end = Math.Min(start + asLongAs, pass.End.Value);
        for (var i = start; i < end; i++)
        {
            if (_bars[i].EndsSection)
            {
                end = i + 1;
            }
        }

        if (end > start)
        {
            WriteEnding(start, end, [time]);
        }

        return end;
    }

    private void WriteEnding(int start, int end, Items<int> times)
    {
        Write(start, end);
        Mark(_paper.Count - (end - start), b => b with { EndingBegins = times });
        Mark(_paper.Count - 1, b => b with { EndingEnds = times });
    }

    private void Write(int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            _paper.Add(new PaperBar(_bars[i], i));
        }
    }

    private void Mark(int at, Func<PaperBar, PaperBar> mark) => _paper[at] = mark(_paper[at]);

    private int Common(int first, Range pass)
    {
        var common = 0;
        while (common < Length(pass) && first + common < pass.Start.Value && _contents[first + common] == _contents[pass.Start.Value + common])
        {
            common++;
        }

        return common;
    }

    private IEnumerable<int> Contents(Range pass) => Enumerable.Range(pass.Start.Value, Length(pass)).Select(i => _contents[i]);

    private static int Length(Range pass) => pass.End.Value - pass.Start.Value;
}
