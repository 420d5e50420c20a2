using System.Globalization;
using System.Text;
using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>What stands in each bar as heard: notes by voice, chords, speeds.</summary>
internal sealed class HeardBars
{
    private readonly Arrangement _arrangement;
    private readonly Beats[] _starts;
    private readonly List<VoiceNote>[][] _notes;
    private readonly List<ChordMark>[] _marks;
    private readonly string?[] _inForce;
    private readonly List<TempoChange>[] _tempi;

    public HeardBars(Arrangement arrangement)
    {
        _arrangement = arrangement;
        _starts = [.. arrangement.Bars.Select(b => b.Start)];
        _notes = [.. Enum.GetValues<ScoreVoice>().Select(voice => Spread(VoiceNote.Of(arrangement, voice)))];
        _marks = [.. _starts.Select(_ => new List<ChordMark>())];
        _tempi = [.. _starts.Select(_ => new List<TempoChange>())];
        _inForce = new string?[_starts.Length];
        string? last = null;
        var marks = new Queue<ChordMark>(ChordMark.Of(arrangement));
        for (var i = 0; i < _starts.Length; i++)
        {
            _inForce[i] = last;
            while (marks.TryPeek(out var mark) && BarOf(mark.At) <= i)
            {
                _marks[i].Add(marks.Dequeue());
                last = mark.Symbol;
            }
        }

        foreach (var change in arrangement.Tempi.Changes)
        {
            _tempi[BarOf(change.From)].Add(change);
        }
    }

    /// <summary>The notes of a voice that sound in a bar, in order.</summary>
    public IReadOnlyList<VoiceNote> Notes(int bar, ScoreVoice voice) => _notes[(int)voice][bar];

    /// <summary>The chords that begin in a bar.</summary>
    public IReadOnlyList<ChordMark> Marks(int bar) => _marks[bar];

    /// <summary>The speeds that begin in a bar.</summary>
    public IReadOnlyList<TempoChange> Tempi(int bar) => _tempi[bar];

    /// <summary>For each bar a number that is the same where the sheet's bar and all that stands in it are.</summary>
    public IReadOnlyList<int> Contents()
    {
        var numbers = new Dictionary<string, int>();
        return [.. Enumerable.Range(0, _starts.Length).Select(i => numbers.TryGetValue(Content(i), out var known) ? known : numbers[Content(i)] = numbers.Count)];
    }

    // The first speed is said once, whatever is heard again. What sounded before matters only where no chord begins.
    private string Content(int i)
    {
        var bar = _arrangement.Bars[i];
        var before = _marks[i] is [{ At: var first }, ..] && first == bar.Start ? "" : _inForce[i];
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{bar.Written} {bar.Length} {bar.Meter} {before}|");
        foreach (var mark in _marks[i])
        {
            text.Append(CultureInfo.InvariantCulture, $"{mark.At - bar.Start} {mark.Symbol} {mark.SoundingBass}|");
        }

        foreach (var change in _tempi[i].Where(t => t.From != Beats.Zero))
        {
            text.Append(CultureInfo.InvariantCulture, $"{change.From - bar.Start} {change.Tempo.Unit} {change.Tempo.PerMinute:R}|");
        }

        foreach (var note in _notes.SelectMany(voice => voice[i]))
        {
            text.Append(CultureInfo.InvariantCulture, $"{note.Voice} {note.Start - bar.Start} {note.End - bar.Start} {note.IsRolled}");
            foreach (var stroke in note.Strokes)
            {
                text.Append(CultureInfo.InvariantCulture, $" {stroke.Note.Midi} {stroke.Limb} {stroke.Sheet?.Name}");
            }

            text.Append('|');
        }

        return text.ToString();
    }

    private List<VoiceNote>[] Spread(IReadOnlyList<VoiceNote> notes)
    {
        List<VoiceNote>[] bars = [.. _starts.Select(_ => new List<VoiceNote>())];
        foreach (var note in notes)
        {
            for (var bar = BarOf(note.Start); bar < bars.Length && _starts[bar] < note.End; bar++)
            {
                bars[bar].Add(note);
            }
        }

        return bars;
    }

    private int BarOf(Beats place)
    {
        var found = Array.BinarySearch(_starts, place);
        return found >= 0 ? found : Math.Max(0, ~found - 1);
    }
}
