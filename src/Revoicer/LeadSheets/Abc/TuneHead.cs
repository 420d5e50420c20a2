using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>A voice as "V:" declares it.</summary>
/// <param name="Name">The word behind the colon.</param>
/// <param name="LongName">Its name= or nm=; empty where there is none.</param>
/// <param name="Octaves">Octaves by which its clef moves the notes; null where it says nothing of it.</param>
internal sealed record AbcVoice(string Name, string LongName, int? Octaves)
{
    public static AbcVoice? Read(AbcPiece field, Remarks remarks)
    {
        var words = field.Words();
        if (words.Count == 0)
        {
            remarks.Refuse(field.Where, "a voice without a name", "a word behind 'V:'");
            return null;
        }

        const int Unsaid = int.MinValue;
        var octaves = Unsaid;
        foreach (var word in words.Skip(1))
        {
            StaffWords.Read(word, ref octaves, remarks);
        }

        var longName = words.Skip(1).Select(w => w.Text)
            .Where(w => w.StartsWith("name=", StringComparison.Ordinal) || w.StartsWith("nm=", StringComparison.Ordinal))
            .Select(w => w[(w.IndexOf('=', StringComparison.Ordinal) + 1)..].Trim('"'))
            .FirstOrDefault("");
        return new AbcVoice(words[0].Text, longName, octaves == Unsaid ? null : octaves);
    }

    public bool IsCalled(string name) => Name == name || (LongName == name && name.Length > 0);
}

/// <summary>Reads the fields at the head of a tune, up to "K:".</summary>
internal sealed class TuneHead(Remarks remarks)
{
    private AbcPiece? _tempo;
    private Beats? _unit;
    private bool _saysMeter;
    private int _octaves;

    public string? Title { get; private set; }

    public AbcMeter Meter { get; private set; } = new(null);

    public KeyAlterations? Key { get; private set; }

    /// <summary>Octaves by which the clef in "K:" moves the notes of voices that say nothing of it.</summary>
    public int Octaves => _octaves;

    public AbcPiece? Parts { get; private set; }

    public List<AbcVoice> Voices { get; } = [];

    public List<char> Redefined { get; } = [];

    public AccidentalReach Reach { get; private set; } = AccidentalReach.Pitch;

    /// <summary>Whether "K:" has been read, which ends the head.</summary>
    public bool IsComplete { get; private set; }

    public Beats Unit => _unit ?? Meter.DefaultUnit;

    /// <summary>The speed; null where the head gives none. To be asked for once.</summary>
    public Tempo? ReadTempo() => _tempo is { } field ? SpeedFields.Tempo(field, Unit, remarks) : null;

    /// <summary>Takes a line of the file's head: only metre, unit and accidentals hold for its tunes.</summary>
    public void TakeForAll(AbcLine line)
    {
        if (line.Field is 'M' or 'L' or 'I' || line.IsDirective)
        {
            Take(line);
        }
    }

    public void Take(AbcLine line)
    {
        if (line.IsDirective)
        {
            Reach = Instructions.Reach(line.Text[2..], Reach);
            return;
        }

        switch (line.Field)
        {
            case 'T':
                Title ??= line.Value.Text.Length > 0 ? string.Concat(line.Value.Text.Where(Quoted.IsVisible)) : null;
                break;
            case 'M':
                _saysMeter = true;
                Meter = MeterField.Read(line.Value, remarks) ?? Meter;
                break;
            case 'L':
                _unit = SpeedFields.Unit(line.Value, remarks) ?? _unit;
                break;
            case 'Q':
                _tempo = line.Value;
                break;
            case 'P':
                Parts = line.Value;
                break;
            case 'V' when AbcVoice.Read(line.Value, remarks) is { } voice:
                Voices.Add(voice);
                break;
            case 'K':
                Complete(line);
                break;
            default:
                TakeOther(line);
                break;
        }
    }

    private void TakeOther(AbcLine line)
    {
        if (line.Field == 'U' && line.Value.Text.Length > 0)
        {
            Redefined.Add(line.Value.Text[0]);
        }

        if (line.Field == 'I')
        {
            Reach = Instructions.Reach(line.Value.Text, Reach);
        }
        else if (line.Field is null)
        {
            remarks.Refuse(line.Where, $"'{Quoted.Text(line.Text)}' at the head of a tune", "a field as 'T:', and 'K:' before the first line of music");
        }
        else
        {
            Instructions.Unread(line.Field.Value, line.Where, remarks);
        }
    }

    private void Complete(AbcLine line)
    {
        IsComplete = true;
        Key = KeyField.Read(line.Value, null, ref _octaves, remarks);
        if (!_saysMeter)
        {
            remarks.Warn(line.Where, "no metre is given; bars are taken as they are", "'M:4/4' before 'K:'");
        }
    }
}
