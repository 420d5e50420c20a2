using System.Globalization;
using System.Text.RegularExpressions;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>
/// Names notes as a player in a key expects them: E flat in B flat major, D sharp in E minor. The twelve names are those
/// from three fifths below the signature to eight above it, which holds the raised notes of the minor key (common
/// practice). Without a key the window of C major is taken. In a chord its symbol's own names come first.
/// </summary>
internal sealed partial class KeySpelling
{
    private const int FifthsBelow = 3;

    // A note of the same sound lies twelve fifths away.
    private const int Enharmonic = 12;

    private const int OctaveSemitones = 12;

    private readonly NoteName[] _names = new NoteName[12];

    public KeySpelling(KeySignature? key)
    {
        var lowest = (key?.Fifths ?? 0) - FifthsBelow;
        for (var fifths = lowest; fifths < lowest + _names.Length; fifths++)
        {
            var name = Plain(fifths, key);
            _names[name.PitchClass.Value] = name;
        }
    }

    /// <summary>"Eb4"; middle C is C4.</summary>
    public string Of(WrittenNote note) => Of(note, []);

    /// <summary>The same for a bell that rings in a chord, where the chord's own name comes first.</summary>
    public string Of(WrittenNote note, Items<NoteName> chord) => Text(NameOf(note.PitchClass, chord), note.Midi);

    /// <summary>"Eb5" of the pitch heard, in a chord as heard.</summary>
    public string Of(StrikeNote note, Items<NoteName> chord) => Text(NameOf(note.PitchClass, chord), note.Midi);

    /// <summary>"C3 E4 G4".</summary>
    public string Of(Items<WrittenNote> notes) => string.Join(' ', notes.Select(Of));

    /// <summary>
    /// A sentence about bells, which are named with sharps where no key is known, with the key's names for them: "A#4 is
    /// struck again" becomes "Bb4 is struck again". It may hold no chord symbol.
    /// </summary>
    public string In(string sentence) => SharpNote().Replace(sentence, sharp =>
    {
        var tone = new NoteName(Enum.Parse<Letter>(sharp.Groups["letter"].ValueSpan), 1).PitchClass.Value;
        var octave = int.Parse(sharp.Groups["octave"].ValueSpan, CultureInfo.InvariantCulture);
        return Text(_names[tone], (OctaveSemitones * (octave + 1)) + tone);
    });

    /// <summary>
    /// The name in a chord: as the chord spells it, unless that takes two accidentals where the key's own name has fewer.
    /// </summary>
    public NoteName NameOf(PitchClass heard, Items<NoteName> chord)
    {
        var own = _names[heard.Value];
        var most = Math.Max(1, Math.Abs(own.Alteration));
        return chord.Where(n => n.PitchClass == heard && Math.Abs(n.Alteration) <= most).Append(own).First();
    }

    // Of the keys' names only the raised sixth and seventh of minor have two accidentals; any other is read more plainly.
    private static NoteName Plain(int fifths, KeySignature? key)
    {
        var name = NoteName.AtFifths(fifths);
        var isRaised = key is { Mode: Mode.Minor } minor && fifths - minor.Tonic.FifthsFromC is 3 or 5;
        return name.Alteration switch
        {
            < -1 => NoteName.AtFifths(fifths + Enharmonic),
            > 1 when !isRaised => NoteName.AtFifths(fifths - Enharmonic),
            _ => name,
        };
    }

    [GeneratedRegex(@"\b(?<letter>[A-G])#(?<octave>-?\d)\b", RegexOptions.CultureInvariant)]
    private static partial Regex SharpNote();

    private static string Text(NoteName name, int midi)
    {
        var octave = (int)Math.Floor((midi - name.Alteration) / 12.0) - 1;
        return string.Create(CultureInfo.InvariantCulture, $"{name}{octave}");
    }
}
