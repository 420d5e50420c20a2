using System.Globalization;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>
/// Names notes as a player in a key expects them: E flat in B flat major, D sharp in E minor. The twelve names are those
/// from three fifths below the signature to eight above it, which holds the raised notes of the minor key (common
/// practice). Without a key the window of C major is taken.
/// </summary>
internal sealed class KeySpelling(KeySignature? key)
{
    private const int FifthsBelow = 3;

    /// <summary>"Eb4"; middle C is C4.</summary>
    public string Of(WrittenNote note) => Name(note.Midi);

    /// <summary>
    /// The same for a bell struck in a chord, spelled as the chord spells it, unless that takes two accidentals.
    /// </summary>
    public string Of(WrittenNote note, Items<NoteName> chord)
    {
        foreach (var name in chord)
        {
            if (name.PitchClass == note.PitchClass && Math.Abs(name.Alteration) <= 1)
            {
                return Text(name, note.Midi);
            }
        }

        return Of(note);
    }

    /// <summary>"Eb5" of the pitch heard.</summary>
    public string Of(StrikeNote note) => Name(note.Midi);

    /// <summary>"C3 E4 G4".</summary>
    public string Of(Items<WrittenNote> notes) => string.Join(' ', notes.Select(Of));

    private string Name(int midi)
    {
        // Seven fifths up are one semitone up, octaves aside; so the place on the line follows from the pitch class.
        var lowest = (key?.Fifths ?? 0) - FifthsBelow;
        var steps = PitchClass.Of((7 * midi) - lowest).Value;
        return Text(NoteName.AtFifths(lowest + steps), midi);
    }

    private static string Text(NoteName name, int midi)
    {
        var octave = (int)Math.Floor((midi - name.Alteration) / 12.0) - 1;
        return string.Create(CultureInfo.InvariantCulture, $"{name}{octave}");
    }
}
