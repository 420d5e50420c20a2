using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>
/// Unfolds repeats with first and second endings into the order in which bars are heard. A repeat without a beginning
/// goes back to where the last repeat ended, or to the start of the piece (common practice).
/// </summary>
internal sealed class RepeatOrder
{
    private readonly List<int> _order = [];
    private readonly ICollection<Problem> _problems;
    private int _from;
    private RepeatMarks? _opened;
    private (int Bar, RepeatMarks Marks)? _firstEnding;
    private RepeatMarks? _awaitsSecond;
    private bool _inSecond;

    private RepeatOrder(ICollection<Problem> problems) => _problems = problems;

    /// <summary>The bars as heard, as indices into the bars as written; what is wrong with the signs is added to problems.</summary>
    public static IReadOnlyList<int> Of(IEnumerable<RepeatMarks> bars, ICollection<Problem> problems)
    {
        var order = new RepeatOrder(problems);
        foreach (var (index, marks) in bars.Index())
        {
            order.Open(index, marks);
            order.BeginEnding(index, marks);
            order._order.Add(index);
            order.Close(index, marks);
        }

        order.Finish();
        return order._order;
    }

    /// <summary>Bars as heard, with the count of hearings and the place of each.</summary>
    public static Items<PlayedBar> Played(IReadOnlyList<WrittenBar> bars, IEnumerable<int> order)
    {
        var heard = new int[bars.Count];
        var start = Beats.Zero;
        var played = new List<PlayedBar>();
        foreach (var index in order)
        {
            played.Add(new PlayedBar(index, ++heard[index], start));
            start += bars[index].Length;
        }

        return played.ToItems();
    }

    private void Open(int index, RepeatMarks marks)
    {
        if (!marks.Opens)
        {
            return;
        }

        if (_opened is not null || _firstEnding is not null)
        {
            Blame(marks, "a repeat begins inside a repeat", "':|' before it");
        }

        (_from, _opened, _firstEnding, _inSecond) = (index, marks, null, false);
    }

    private void BeginEnding(int index, RepeatMarks marks)
    {
        if (marks.Ending == 2)
        {
            if (_awaitsSecond is null)
            {
                Blame(marks, "a second ending without a first", "a first ending '[1' that ends with ':|'");
            }

            (_awaitsSecond, _inSecond) = (null, true);
        }

        BlameMissingSecond();
        if (marks.Ending == 1)
        {
            if (_firstEnding is not null)
            {
                Blame(marks, "a first ending inside a first ending", "':|', then '[2'");
            }

            _firstEnding = (index, marks);
        }
    }

    private void Close(int index, RepeatMarks marks)
    {
        if (!marks.Closes)
        {
            return;
        }

        if (_inSecond)
        {
            Blame(marks, "a repeat ends after a second ending without having begun", "'|:' where it begins");
        }

        // The second time the first ending is left out.
        _order.AddRange(Enumerable.Range(_from, (_firstEnding?.Bar ?? index + 1) - _from));
        _awaitsSecond = _firstEnding?.Marks;
        (_from, _opened, _firstEnding) = (index + 1, null, null);
    }

    private void Finish()
    {
        BlameMissingSecond();
        if (_firstEnding is { } ending)
        {
            Blame(ending.Marks, "a first ending without an end", "':|' at its end, then '[2'");
        }
        else if (_opened is { } opened)
        {
            Blame(opened, "a repeat without an end", "':|' at its end");
        }
    }

    private void BlameMissingSecond()
    {
        if (_awaitsSecond is { } marks)
        {
            Blame(marks, "a first ending without a second", "'[2' after its ':|'");
            _awaitsSecond = null;
        }
    }

    private void Blame(RepeatMarks marks, string found, string expected) =>
        _problems.Add(new Problem(marks.Where, found, expected));
}
