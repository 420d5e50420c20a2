using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.Music;

namespace Revoicer.Arrangements;

/// <summary>
/// The close root position, against which a voicing is held: the root in the octave from written C to B below middle C,
/// the third (or what is suspended in its place) and the fifth right above it; a missing bell an octave up.
/// </summary>
internal static class ClosePosition
{
    private const int LowestRoot = 48;

    /// <summary>Its keys, root first; a tone that the tower has in no octave above is left out.</summary>
    public static IEnumerable<WrittenNote> Of(ChordSymbol symbol, Tower tower)
    {
        var root = LowestRoot + symbol.Root.PitchClass.Value;
        return symbol.Tones
            .Where(t => t.Degree.Number <= 5)
            .Select(t => root + (t.Degree.Semitones % 12))
            .Distinct()
            .Select(midi => OnTower(midi, tower))
            .OfType<WrittenNote>();
    }

    private static WrittenNote? OnTower(int midi, Tower tower)
    {
        for (; midi <= tower.Bells[^1].Note.Midi; midi += 12)
        {
            if (tower.At(WrittenNote.AtMidi(midi)) is { } bell)
            {
                return bell.Note;
            }
        }

        return null;
    }
}
