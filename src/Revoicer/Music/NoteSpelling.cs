using System.Globalization;

namespace Revoicer.Music;

/// <summary>Reads notes with octave as people write them: "C4", "F#3", "Bb2"; middle C = C4 (ISO 16).</summary>
internal static class NoteSpelling
{
    /// <summary>The MIDI number (middle C = 60) of a note's name, if it is one and lies within 0..127.</summary>
    public static bool TryMidi(string text, out int midi)
    {
        midi = -1;
        var letter = "CDEFGAB".IndexOf(text.Length > 0 ? text[0] : ' ', StringComparison.Ordinal);
        var accidentals = text.Skip(1).TakeWhile(c => c is '#' or 'b' or '\u266F' or '\u266D').ToList();
        if (letter < 0 || accidentals.Count > 2 || accidentals.Distinct().Count() > 1)
        {
            return false;
        }

        var octave = text[(1 + accidentals.Count)..];
        if (octave.Length > 2 || !int.TryParse(octave, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
        {
            return false;
        }

        var alteration = accidentals.Count == 0 ? 0 : accidentals[0] is '#' or '\u266F' ? accidentals.Count : -accidentals.Count;
        midi = (12 * (number + 1)) + new NoteName((Letter)letter).PitchClass.Value + alteration;
        return midi is >= 0 and <= 127;
    }
}
