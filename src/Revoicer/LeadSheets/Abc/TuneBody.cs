using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Reads the lines of a tune behind its head; music of other voices than the tune's is passed over.</summary>
internal sealed class TuneBody
{
    /// <summary>The name of the voice where none is named.</summary>
    public const string OnlyVoice = "1";

    private readonly Remarks _remarks;
    private readonly TuneHead _head;
    private readonly TuneVoice _voice;
    private readonly MusicReader _music;
    private readonly List<AbcVoice> _voices;
    private AbcVoice? _current;
    private AbcVoice? _wanted;
    private readonly string? _choice;
    private readonly HashSet<char> _parts = [];
    private AccidentalReach _reach;

    /// <summary>A reader for the body under a head.</summary>
    /// <param name="head">The head, complete.</param>
    /// <param name="choice">The name of the voice that has the tune; null for the first.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public TuneBody(TuneHead head, string? choice, Remarks remarks)
    {
        (_head, _choice, _remarks) = (head, choice, remarks);
        _voice = new TuneVoice(remarks) { Unit = head.Unit, Octaves = head.Octaves };
        _reach = head.Reach;
        _voice.Reach = _reach;
        _voice.SetMeter(head.Meter.Meter);
        _voice.SetKey(head.Key ?? KeyAlterations.None);
        _music = new MusicReader(_voice, remarks);
        head.Redefined.ForEach(_music.Redefine);
        _voices = [.. head.Voices.DistinctBy(v => v.Name)];
        _current = _voices.FirstOrDefault();
        _wanted = choice is null ? _current : _voices.FirstOrDefault(v => v.Name == choice) ?? _voices.FirstOrDefault(v => v.IsCalled(choice));
        ApplyOctaves(_wanted);
    }

    /// <summary>The bars that were read.</summary>
    public IReadOnlyList<ReadBar> Bars => _voice.Bars;

    /// <summary>Whether the tune has more bars than a sheet may have.</summary>
    public bool IsFull => _voice.IsFull;

    /// <summary>The name of the voice that was read.</summary>
    public string Voice => _wanted?.Name ?? OnlyVoice;

    /// <summary>Its name= or nm=; empty where it has none.</summary>
    public string LongName => _wanted?.LongName ?? "";

    /// <summary>The voices that were passed over, by name.</summary>
    public IReadOnlyList<string> OtherVoices => [.. _voices.Where(v => v != _wanted).Select(v => v.Name)];

    public void Take(AbcLine line)
    {
        if (line.IsDirective)
        {
            SetReach(line.Text[2..]);
        }
        else if (line.Field is { } field)
        {
            TakeField(field, line.Value, line.Where);
        }
        else
        {
            TakeMusic(new AbcCursor(line.Text, line.Where));
        }
    }

    /// <summary>To be called once, behind the last line.</summary>
    public void Finish(Place last)
    {
        _voice.Finish(last);
        if (_wanted is null && _choice is not null)
        {
            var names = string.Join(", ", _voices.Take(10).Select(v => Quoted.Text(v.Name)));
            _remarks.Refuse(last, $"the tune has no voice '{Quoted.Text(_choice)}'", names.Length > 0 ? $"one of its voices: {names}" : "no voice named: it has only one");
        }
    }

    private bool IsHeard => _wanted is not null && _current == _wanted;

    private void TakeMusic(AbcCursor cursor)
    {
        if (_current is null)
        {
            ChangeVoice(new AbcVoice(OnlyVoice, "", null));
        }

        while (!cursor.IsAtEnd && !_remarks.IsFull && !IsFull)
        {
            if (!IsHeard)
            {
                cursor.SkipTo("[V:");
            }

            if (cursor.Here == '[' && cursor.Ahead(2) == ':' && char.IsAsciiLetter(cursor.Next))
            {
                TakeInline(cursor);
            }
            else if (!cursor.IsAtEnd)
            {
                _music.ReadElement(cursor);
            }
        }
    }

    private void TakeInline(AbcCursor cursor)
    {
        var from = cursor.At;
        var field = cursor.Next;
        cursor.Skip(3);
        var start = cursor.At;
        if (cursor.TakeThrough(']') is { } text)
        {
            TakeField(field, AbcPiece.Of(text, cursor.From(start).Part(0, text.Length)), cursor.From(from));
        }
        else
        {
            cursor.SkipToEnd();
            _remarks.Refuse(cursor.From(from), $"'[{field}:' without ']'", "']' behind the field");
        }
    }

    private void TakeField(char field, AbcPiece value, Place where)
    {
        switch (field)
        {
            case 'V' when AbcVoice.Read(value, _remarks) is { } voice:
                ChangeVoice(voice);
                break;
            case 'P':
                BeginPart(value);
                break;
            case 'I':
                SetReach(value.Text);
                break;
            case 'K' or 'M' or 'L' or 'Q' when _current is null || IsHeard:
                Change(field, value);
                break;
            case 'U' when value.Text.Length > 0:
                _music.Redefine(value.Text[0]);
                Instructions.Unread(field, where, _remarks);
                break;
            case 'K' or 'M' or 'L' or 'Q':
                break;
            default:
                Instructions.Unread(field, where, _remarks);
                break;
        }
    }

    private void Change(char field, AbcPiece value)
    {
        switch (field)
        {
            case 'K':
                var octaves = _voice.Octaves;
                if (KeyField.Read(value, _voice.Key, ref octaves, _remarks) is { } key && key != _voice.Key)
                {
                    _voice.SetKey(key);
                }

                _voice.Octaves = octaves;
                break;
            case 'M' when MeterField.Read(value, _remarks) is { } meter:
                _voice.SetMeter(meter.Meter);
                break;
            case 'L' when SpeedFields.Unit(value, _remarks) is { } unit:
                _voice.Unit = unit;
                break;
            case 'Q' when SpeedFields.Tempo(value, _voice.Unit, _remarks) is { } tempo:
                _voice.AddTempo(tempo);
                break;
        }
    }

    private void ChangeVoice(AbcVoice voice)
    {
        var known = _voices.FirstOrDefault(v => v.Name == voice.Name);
        if (known is null)
        {
            _voices.Add(known = voice);
        }

        _current = known;
        if (_wanted is null && (_choice is null || known.IsCalled(_choice)))
        {
            _wanted = known;
        }

        if (IsHeard)
        {
            ApplyOctaves(voice);
        }
    }

    private void ApplyOctaves(AbcVoice? voice) => _voice.Octaves = voice?.Octaves ?? _voice.Octaves;

    // Each voice may say where a part begins; what another says counts where it is the first to say so.
    private void BeginPart(AbcPiece value)
    {
        if (value.Text.Length != 1 || !char.IsAsciiLetter(value.Text[0]))
        {
            _remarks.Warn(value.Where, $"'{Quoted.Text(value.Text)}' names no part and is passed over", "one letter behind 'P:'");
        }
        else if (_parts.Add(value.Text[0]) || _current is null || IsHeard)
        {
            _voice.BeginPart(value.Text[0], value.Where);
        }
    }

    private void SetReach(string directive)
    {
        _reach = Instructions.Reach(directive, _reach);
        _voice.Reach = _reach;
    }
}
