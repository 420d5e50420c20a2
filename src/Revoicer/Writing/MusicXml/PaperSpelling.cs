using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Writing.Text;

namespace Revoicer.Writing.MusicXml;

/// <summary>Spells the bells of a score: the tune as the sheet does, the rest as chord and key do.</summary>
internal sealed class PaperSpelling(Arrangement arrangement)
{
    private readonly ChordOfStroke _chords = new(arrangement);
    private readonly Dictionary<KeySignature, KeySpelling> _keys = [];
    private readonly KeySpelling _noKey = new(null);

    /// <summary>The name of a stroke's bell.</summary>
    public NoteName NameOf(Stroke stroke, KeySignature? key)
    {
        if (stroke.Sheet is { } sheet && sheet.Name.PitchClass == stroke.Note.PitchClass && Math.Abs(sheet.Name.Alteration) <= 2)
        {
            return sheet.Name;
        }

        var chord = _chords.Of(stroke) ?? _chords.At(stroke.Beat);
        return Spelling(key).NameOf(stroke.Note.PitchClass, chord?.ToneNames ?? []);
    }

    /// <summary>The octave in which a name is written, middle C in 4.</summary>
    public static int OctaveOf(WrittenNote note, NoteName name) => (int)Math.Floor((note.Midi - name.Alteration) / 12.0) - 1;

    private KeySpelling Spelling(KeySignature? key)
    {
        if (key is not { } found)
        {
            return _noKey;
        }

        return _keys.TryGetValue(found, out var spelling) ? spelling : _keys[found] = new KeySpelling(found);
    }
}
