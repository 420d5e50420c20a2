using Revoicer.Music;

namespace Revoicer.LeadSheets.Abc;

/// <summary>How far an accidental holds (standard 2.1, "%%propagate-accidentals").</summary>
internal enum AccidentalReach
{
    /// <summary>For the note it stands before.</summary>
    Note,

    /// <summary>For notes of that letter in the same octave up to the bar line.</summary>
    Octave,

    /// <summary>For notes of that letter in all octaves up to the bar line; the standard's default.</summary>
    Pitch,
}

/// <summary>Which alteration a note has by the key, by accidentals earlier in its bar, and by a tie into it.</summary>
internal sealed class AccidentalMemory
{
    private readonly Dictionary<(Letter Letter, int Octave), int> _inBar = [];
    private readonly Dictionary<(Letter Letter, int Octave), int> _tied = [];
    private Dictionary<(Letter Letter, int Octave), int> _beforeEndings = [];

    public KeyAlterations Key { get; set; } = KeyAlterations.None;

    public AccidentalReach Reach { get; set; } = AccidentalReach.Pitch;

    /// <summary>The alteration of a note in semitones; an accidental before it is kept in mind.</summary>
    public int Of(AbcPitch pitch)
    {
        var place = (pitch.Letter, Reach == AccidentalReach.Pitch ? 0 : pitch.Octave);
        if (pitch.Accidental is { } accidental)
        {
            if (Reach != AccidentalReach.Note)
            {
                _inBar[place] = accidental;
            }

            return accidental;
        }

        // A tie carries an accidental over the bar line (common practice).
        return _tied.TryGetValue((pitch.Letter, pitch.Octave), out var tied) ? tied
            : _inBar.TryGetValue(place, out var found) ? found
            : Key.Alterations[(int)pitch.Letter];
    }

    /// <summary>A tie leads from this note to the next.</summary>
    public void Tie(AbcPitch pitch, int alteration) => _tied[(pitch.Letter, pitch.Octave)] = alteration;

    /// <summary>The note after a tie has come.</summary>
    public void EndTies() => _tied.Clear();

    /// <summary>An ending begins. A later one goes on from the notes before the first, and so do ties into it.</summary>
    public void BeginEnding(bool isFirst)
    {
        if (isFirst)
        {
            _beforeEndings = new(_tied);
            return;
        }

        _tied.Clear();
        foreach (var (place, alteration) in _beforeEndings)
        {
            _tied[place] = alteration;
        }
    }

    public void EndBar() => _inBar.Clear();
}
