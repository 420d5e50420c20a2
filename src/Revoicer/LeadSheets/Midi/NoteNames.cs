using Revoicer.Music;

namespace Revoicer.LeadSheets.Midi;

/// <summary>
/// Names for notes that a file knows by number alone. In a key the twelve names are those from three fifths below its
/// signature to eight above, which holds the raised notes of the minor key (common practice).
/// </summary>
internal sealed class NoteNames
{
    private const int FifthsBelow = 3;
    private const int Enharmonic = 12;

    private readonly NoteName[] _names = new NoteName[12];

    /// <summary>The names of a signature.</summary>
    /// <param name="fifths">Its sharps, or flats if negative; -7..7.</param>
    public NoteNames(int fifths)
    {
        for (var place = fifths - FifthsBelow; place < fifths - FifthsBelow + _names.Length; place++)
        {
            var name = NoteName.AtFifths(place);
            name = name.Alteration < -1 ? NoteName.AtFifths(place + Enharmonic) : name;
            _names[name.PitchClass.Value] = name;
        }
    }

    /// <summary>The name of a note by its number.</summary>
    public NoteName Of(int pitch) => _names[PitchClass.Of(pitch).Value];

    /// <summary>
    /// The signature whose seven tones most of the notes are; the one with fewer accidentals where several do as well, flats
    /// before sharps.
    /// </summary>
    /// <param name="pitches">The notes by number, 0..127.</param>
    public static int Likely(IEnumerable<int> pitches)
    {
        var counts = pitches.CountBy(p => PitchClass.Of(p)).ToArray();
        return Enumerable.Range(-6, 13).OrderBy(Math.Abs).MaxBy(fifths =>
        {
            var scale = new KeySignature(NoteName.AtFifths(fifths), Mode.Major).Scale;
            return counts.Where(c => scale.Contains(c.Key)).Sum(c => c.Value);
        });
    }
}
