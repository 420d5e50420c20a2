using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Puts what is read into bars, one after the other.</summary>
internal sealed class BarWriter(Remarks remarks)
{
    // What hostile numbers may ask for at most; keeps exact sums within 64 bits.
    private static readonly Beats LongestBar = Beats.OfQuarters(1000);

    private readonly List<ReadBar> _bars = [];
    private ReadBar _open = new();
    private Meter? _meter;
    private KeyAlterations? _nextKey;
    private (int FirstNote, Beats Start)? _last;

    /// <summary>The bars that are complete.</summary>
    public IReadOnlyList<ReadBar> Bars => _bars;

    /// <summary>Whether no more bars are taken.</summary>
    public bool IsFull => _bars.Count > SheetLimits.MostBars;

    /// <summary>Whether a note or rest stands right before, in this bar.</summary>
    public bool HasLast => _last is not null;

    /// <summary>Whether an ending begins with this bar.</summary>
    public bool IsAtEnding => _open.Ending.Count > 0;

    /// <summary>The present place in the open bar.</summary>
    public Beats Here => _open.Length;

    /// <summary>The metre from the next bar line on, at once where nothing stands in the bar.</summary>
    public void SetMeter(Meter? meter)
    {
        _meter = meter;
        if (_open.IsEmpty)
        {
            _open.Meter = meter;
        }
    }

    /// <summary>A key that begins with this bar where nothing stands in it, else with the next.</summary>
    public void SetKey(KeyAlterations key)
    {
        if (_open.IsEmpty)
        {
            _open.Key = key;
        }
        else
        {
            _nextKey = key;
        }
    }

    public void AddTempo(Tempo tempo) => _open.Tempi.Add(new TempoChange(Here, tempo));

    public void AddFermata() => _open.Fermatas.Add(Here);

    /// <summary>A symbol at the present place; false where one stands there, which it replaces.</summary>
    public bool AddSymbol(PlacedSymbol symbol)
    {
        var replaces = _open.Symbols.Count > 0 && _open.Symbols[^1].Start == symbol.Start;
        if (replaces)
        {
            _open.Symbols.RemoveAt(_open.Symbols.Count - 1);
        }

        _open.Symbols.Add(symbol);
        return !replaces;
    }

    /// <summary>A note, the notes of a chord, or a rest without notes; the present place moves on by its length.</summary>
    public void Add(IEnumerable<TuneNote> notes, Beats length, Place where)
    {
        _open.Where ??= where;
        _last = (_open.Notes.Count, Here);
        _open.Notes.AddRange(notes.OrderBy(n => n.Note));
        _open.Length += length;
        if (_open.Length > LongestBar)
        {
            remarks.Refuse(where, $"a bar of more than {LengthWords.Quarters(LongestBar)}", "a bar line before it");
            _open.Length = Beats.Zero;
        }
    }

    /// <summary>Makes the last note, chord or rest of the bar longer or shorter, and gives its length.</summary>
    public Beats Stretch(AbcFactor factor)
    {
        ChangeLast(n => n with { Length = n.Length * factor });
        var start = _last?.Start ?? Here;
        var length = (Here - start) * factor;
        _open.Length = start + length;
        return length;
    }

    /// <summary>Leads a tie from the last note or chord to the next.</summary>
    public void TieLast() => ChangeLast(n => n with { IsTiedOn = true });

    /// <summary>Ends the bar. Where nothing stands in it, the line joins the one before it.</summary>
    public void End(ReadBarLine line)
    {
        var last = _open.IsEmpty ? _bars.LastOrDefault() : _open;
        if (last is not null && (last == _open || _open.Opening is null))
        {
            last.Closes = Math.Max(last.Closes, line.Closes);
            last.EndsSection |= line.IsDouble;
        }
        else if (line.Closes > 0)
        {
            remarks.Refuse(line.Where, "a repeat ends with no bar before it", "a bar before it");
        }

        if (!_open.IsEmpty)
        {
            _bars.Add(_open);
            _open = new ReadBar { Meter = _meter, Key = _nextKey };
            _nextKey = null;
        }

        _last = null;
        _open.Opening = line.Opens > 0 ? line : _open.Opening;
    }

    /// <summary>An ending begins here.</summary>
    public void BeginEnding(IReadOnlyList<int> numbers, Place where)
    {
        Part(where);
        (_open.Ending, _open.EndingPlace) = (numbers, where);
    }

    /// <summary>A part begins here.</summary>
    public void BeginPart(char label, Place where)
    {
        Part(where);
        _open.Part = label;
    }

    /// <summary>Ends the last bar; to be called once.</summary>
    public void Finish(Place where)
    {
        End(ReadBarLine.Unseen(where));
        if (_bars.Count > 0)
        {
            _bars[^1].EndsSection = true;
        }
    }

    private void Part(Place where)
    {
        if (!_open.IsEmpty)
        {
            End(ReadBarLine.Unseen(where));
            _open.IsParted = true;
        }
    }

    private void ChangeLast(Func<TuneNote, TuneNote> change)
    {
        for (var i = _last?.FirstNote ?? _open.Notes.Count; i < _open.Notes.Count; i++)
        {
            _open.Notes[i] = change(_open.Notes[i]);
        }
    }
}
