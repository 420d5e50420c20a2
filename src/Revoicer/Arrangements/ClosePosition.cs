using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.Music;

namespace Revoicer.Arrangements;

/// <summary>
/// The close root position, against which a voicing is held: the root in the octave from written C to B below middle C,
/// the third (or what is suspended in its place) and the fifth right above it, the whole chord an octave higher where a
/// bell of it is missing. Sevenths and more are left out.
/// </summary>
internal static class ClosePosition
{
    private const int LowestRoot = 48;

    /// <summary>Its keys, root first; none where the tower has all of them in no octave.</summary>
    public static IReadOnlyList<WrittenNote> Of(ChordSymbol symbol, Tower tower)
    {
        var root = LowestRoot + symbol.Root.PitchClass.Value;
        int[] keys = [.. symbol.Tones.Where(t => t.Degree.Number <= 5).Select(t => root + (t.Degree.Semitones % 12)).Distinct()];
        for (var octave = 0; keys.Max() + octave <= tower.Bells[^1].Note.Midi; octave += 12)
        {
            var bells = keys.Select(k => tower.At(WrittenNote.AtMidi(k + octave))).OfType<Bell>().ToArray();
            if (bells.Length == keys.Length)
            {
                return [.. bells.Select(b => b.Note)];
            }
        }

        return [];
    }
}
