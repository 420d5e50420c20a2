using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>A tone of a note or chord as written.</summary>
/// <param name="Pitch">Its pitch.</param>
/// <param name="Factor">How many units it lasts.</param>
/// <param name="IsTied">Whether a tie leads on from it.</param>
/// <param name="Where">Where it stands.</param>
internal sealed record AbcTone(AbcPitch Pitch, AbcFactor Factor, bool IsTied, Place Where);

/// <summary>The voice that has the tune: turns its notes, rests and signs into bars.</summary>
internal sealed class TuneVoice
{
    private readonly Remarks _remarks;
    private readonly BarWriter _bars;
    private readonly Rhythm _rhythm;
    private readonly AccidentalMemory _accidentals = new();
    private readonly List<(ChordSymbol? Symbol, Place Where)> _symbols = [];
    private readonly List<(AbcPitch Pitch, int Alteration)> _last = [];
    private bool _awaitsFermata;
    private bool _awaitsRoll;
    private bool _isLaterEnding;
    private bool _awaitsTied;
    private Meter? _meter;

    public TuneVoice(Remarks remarks)
    {
        _remarks = remarks;
        _bars = new BarWriter(remarks);
        _rhythm = new Rhythm(remarks);
    }

    public IReadOnlyList<ReadBar> Bars => _bars.Bars;

    /// <summary>Whether there are more bars than a sheet may have.</summary>
    public bool IsFull => _bars.IsFull;

    /// <summary>The unit of note lengths.</summary>
    public Beats Unit { get; set; }

    /// <summary>Octaves by which clef or "octave=" moves the notes.</summary>
    public int Octaves { get; set; }

    public KeyAlterations Key => _accidentals.Key;

    public AccidentalReach Reach
    {
        set => _accidentals.Reach = value;
    }

    public void SetKey(KeyAlterations key)
    {
        _accidentals.Key = key;
        _bars.SetKey(key);
    }

    public void SetMeter(Meter? meter)
    {
        _meter = meter;
        _bars.SetMeter(meter);
    }

    public void AddTempo(Tempo tempo) => _bars.AddTempo(tempo);

    /// <summary>A chord symbol, or N.C. without one, for the place where the next note or rest begins.</summary>
    public void AddSymbol(ChordSymbol? symbol, Place where) => _symbols.Add((symbol, where));

    /// <summary>A fermata on the next note or rest.</summary>
    public void AddFermata() => _awaitsFermata = true;

    /// <summary>A roll mark before the next note or chord.</summary>
    public void AddRoll() => _awaitsRoll = true;

    public void BeginTuplet(int p, int? q, int? notes, Place where) =>
        _rhythm.BeginTuplet(p, q ?? Rhythm.UsualTime(p, _meter), notes ?? p, where);

    /// <summary>A note, or the tones of a chord; the first one's length is the chord's.</summary>
    /// <param name="tones">At least one.</param>
    /// <param name="factor">What stands behind a chord's bracket; 1 for a note.</param>
    /// <param name="where">The note or chord.</param>
    public void AddSound(IReadOnlyList<AbcTone> tones, AbcFactor factor, Place where)
    {
        var written = Unit * tones[0].Factor * factor;
        BeginEvent(where);
        if (_rhythm.Next(written, where) is not { } length)
        {
            return;
        }

        _last.Clear();
        var notes = new Dictionary<int, TuneNote>();
        foreach (var tone in tones)
        {
            // A tone longer than the chord ends with it; a shorter one keeps its share.
            var own = length * tone.Factor * new AbcFactor(tones[0].Factor.Denominator, tones[0].Factor.Numerator);
            var share = own > length ? length : own;
            if (_rhythm.IsWritable(share, tone.Where) && Note(tone, share) is { } note)
            {
                notes.TryAdd(note.Note.Midi, note with { IsRolled = _awaitsRoll, TieEnd = _awaitsTied ? TieEnd.OneEnded : TieEnd.Unsaid });
            }
        }

        (_awaitsRoll, _awaitsTied) = (false, false);

        _accidentals.EndTies();
        foreach (var (tone, (pitch, alteration)) in tones.Zip(_last).Where(t => t.First.IsTied))
        {
            _accidentals.Tie(pitch, alteration);
        }

        _bars.Add(notes.Values, length, where);
    }

    public void AddRest(AbcFactor factor, Place where)
    {
        BeginEvent(where);
        _accidentals.EndTies();
        _last.Clear();
        if (_rhythm.Next(Unit * factor, where) is { } length)
        {
            _bars.Add([], length, where);
        }
    }

    /// <summary>So many bars without notes.</summary>
    public void AddBarsOfRest(int count, Place where)
    {
        if (_meter is not { } meter || _bars.Here != Beats.Zero)
        {
            _remarks.Refuse(where, _meter is null ? "a rest of whole bars in free metre" : "a rest of whole bars inside a bar", "'z' with its length");
            return;
        }

        BeginEvent(where);
        _accidentals.EndTies();
        _last.Clear();
        for (var i = 0; i < count && !IsFull; i++)
        {
            if (i > 0)
            {
                _bars.End(ReadBarLine.Unseen(where));
            }

            _bars.Add([], meter.Bar, where);
        }
    }

    /// <summary>A tie from the last note or chord to the next.</summary>
    public void Tie(Place where)
    {
        // It stands right behind its first note (standard 2.1, section 4.11). Where a later ending begins with one, that note
        // can only be the last one before the first ending.
        if (_isLaterEnding && _bars.IsAtEnding && !_bars.HasLast)
        {
            _awaitsTied = true;
            return;
        }

        if (_last.Count == 0)
        {
            _remarks.Refuse(where, "a tie with no note before it", "a note before '-'");
        }
        else if (!_bars.HasLast)
        {
            _remarks.Warn(where, "a tie at the beginning of a bar ties nothing and is passed over", "'-' right behind the first of the two notes");
            return;
        }

        _bars.TieLast();
        foreach (var (pitch, alteration) in _last)
        {
            _accidentals.Tie(pitch, alteration);
        }
    }

    public void Break(int dots, bool isLongFirst, Place where)
    {
        if (!_bars.HasLast)
        {
            _remarks.Refuse(where, "broken rhythm with no note before it in the bar", "a note or rest after the bar line");
            return;
        }

        _rhythm.IsWritable(_bars.Stretch(_rhythm.Break(dots, isLongFirst, where)), where);
    }

    public void EndBar(ReadBarLine line)
    {
        _rhythm.EndBar();
        _accidentals.EndBar();
        _bars.End(line);
    }

    public void BeginEnding(IReadOnlyList<int> numbers, Place where)
    {
        _isLaterEnding = numbers[0] > 1;
        _accidentals.BeginEnding(!_isLaterEnding);
        _bars.BeginEnding(numbers, where);
    }

    public void BeginPart(char label, Place where) => _bars.BeginPart(label, where);

    /// <summary>To be called once, at the tune's end.</summary>
    public void Finish(Place where)
    {
        _rhythm.Finish();
        foreach (var (_, symbol) in _symbols)
        {
            _remarks.Warn(symbol, "a chord symbol with no note or rest after it", "it before the note or rest where the chord begins");
        }

        _bars.Finish(where);
    }

    private void BeginEvent(Place where)
    {
        foreach (var (symbol, place) in _symbols)
        {
            if (!_bars.AddSymbol(new PlacedSymbol(_bars.Here, symbol, place)))
            {
                _remarks.Warn(place, "two chord symbols at one note; the last one is taken", "a rest or a tied note where the second begins");
            }
        }

        _symbols.Clear();
        if (_awaitsFermata)
        {
            _bars.AddFermata();
            _awaitsFermata = false;
        }
    }

    private TuneNote? Note(AbcTone tone, Beats length)
    {
        var alteration = _accidentals.Of(tone.Pitch);
        _last.Add((tone.Pitch, alteration));
        var name = new NoteName(tone.Pitch.Letter, alteration);
        var midi = (12 * (tone.Pitch.Octave + Octaves + 1)) + new NoteName(tone.Pitch.Letter).PitchClass.Value + alteration;
        if (midi is >= 0 and <= 127)
        {
            return new TuneNote(_bars.Here, length, name, WrittenNote.AtMidi(midi), tone.IsTied);
        }

        _remarks.Refuse(tone.Where, "a note outside the range of notes", "C in the fifth octave below middle C up to G in the sixth above");
        return null;
    }
}
