using Revoicer.Text;

namespace Revoicer.LeadSheets.ChordGrid;

/// <summary>Cuts lines of pieces into bars. The bar line that ends a line and the one that begins the next are one.</summary>
internal sealed class BarCutter(List<Problem> problems)
{
    private readonly List<RawBar> _bars = [];
    private readonly List<GridPiece.Entry> _entries = [];
    private GridPiece.BarLine? _opening;
    private (Place Where, int Number)? _ending;
    private GridPiece? _previous;

    public IReadOnlyList<RawBar> Bars => _bars;

    public void Take(IEnumerable<GridPiece> line)
    {
        _previous = null;
        foreach (var piece in line)
        {
            if (_previous is null && piece is not GridPiece.BarLine)
            {
                problems.Add(new Problem(piece.Where, "the line does not begin with a bar line", "'|'"));
            }

            Take(piece);
            _previous = piece;
        }

        if (_previous is not null and not GridPiece.BarLine)
        {
            problems.Add(new Problem(_previous.Where, "the line does not end with a bar line", "'|' after it"));
            EndBar(closes: false, endsSection: false);
        }
    }

    /// <summary>To be called once, after the last line.</summary>
    public void Finish()
    {
        if (_opening is not null)
        {
            problems.Add(new Problem(_opening.Where, "a repeat begins with no bar after it", "a bar, and ':|' at the repeat's end"));
        }
    }

    private void Take(GridPiece piece)
    {
        switch (piece)
        {
            case GridPiece.Entry entry:
                _entries.Add(entry);
                break;
            case GridPiece.Ending when _previous is not GridPiece.BarLine:
                problems.Add(new Problem(piece.Where, "an ending begins inside a bar", "it right after a bar line"));
                break;
            case GridPiece.Ending { Number: "1" or "2" } ending:
                _ending = (ending.Where, ending.Number == "1" ? 1 : 2);
                break;
            case GridPiece.Ending ending:
                problems.Add(new Problem(piece.Where, $"'[{Quoted.Text(ending.Number)}' is no ending", "'[1' or '[2': a repeat has at most two endings"));
                break;
            case GridPiece.BarLine barLine:
                TakeBarLine(barLine);
                break;
        }
    }

    private void TakeBarLine(GridPiece.BarLine barLine)
    {
        if (_entries.Count > 0)
        {
            EndBar(barLine.Closes, barLine.IsDouble);
        }
        else if (_previous is null)
        {
            JoinLines(barLine);
        }
        else if (_previous is not GridPiece.BarLine { Opens: false } || barLine is not { Opens: true, Closes: false })
        {
            problems.Add(new Problem(barLine.Where, "an empty bar before this bar line", "chords, '%' for the bar before once more, or 'N.C.'"));
            _ending = null;
        }

        _opening = barLine.Opens ? barLine : _opening;
    }

    private void EndBar(bool closes, bool endsSection)
    {
        if (_entries.Count > 0)
        {
            var sign = _ending?.Where ?? _opening?.Where ?? _entries[0].Where;
            _bars.Add(new RawBar([.. _entries], _opening is not null, _ending?.Number ?? 0, sign, closes, endsSection));
        }

        _entries.Clear();
        (_opening, _ending) = (null, null);
    }

    private void JoinLines(GridPiece.BarLine barLine)
    {
        if (barLine.Closes && (_bars.Count == 0 || _opening is not null))
        {
            problems.Add(new Problem(barLine.Where, "a repeat ends with no bar before it", "a bar before it"));
        }
        else if (_bars.Count > 0)
        {
            _bars[^1] = _bars[^1] with
            {
                Closes = _bars[^1].Closes || barLine.Closes,
                EndsSection = _bars[^1].EndsSection || barLine.IsDouble,
            };
        }
    }
}
