namespace Revoicer.Music;

/// <summary>
/// What the player reads and presses: a baton or pedal, named by the MIDI number of the written note (middle C = 60).
/// It is no sounding pitch; adding a <see cref="Transposition"/> gives the <see cref="StrikeNote"/>.
/// </summary>
public readonly record struct WrittenNote : IComparable<WrittenNote>
{
    private WrittenNote(int midi) => Midi = midi;

    /// <summary>The MIDI number of the written note, 0..127.</summary>
    public int Midi { get; }

    /// <summary>The tone without its octave.</summary>
    public PitchClass PitchClass => PitchClass.Of(Midi);

    /// <summary>Whether its baton is one of the raised row (a sharp).</summary>
    public bool IsSharp => (0b0101_0100_1010 >> PitchClass.Value & 1) != 0;

    /// <summary>The written note with a MIDI number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside 0..127.</exception>
    public static WrittenNote AtMidi(int midi) => midi is >= 0 and <= 127
        ? new WrittenNote(midi)
        : throw new ArgumentOutOfRangeException(nameof(midi), midi, "a MIDI note lies within 0..127");

    /// <inheritdoc/>
    public int CompareTo(WrittenNote other) => Midi.CompareTo(other.Midi);

    /// <summary>The strike note of this key's bell.</summary>
    public static StrikeNote operator +(WrittenNote note, Transposition transposition) =>
        StrikeNote.AtMidi(note.Midi + transposition.Semitones);

    /// <summary>The distance upward from b to a.</summary>
    public static Interval operator -(WrittenNote a, WrittenNote b) => new(a.Midi - b.Midi);

    /// <summary>The note an interval higher.</summary>
    public static WrittenNote operator +(WrittenNote note, Interval interval) => AtMidi(note.Midi + interval.Semitones);

    /// <summary>Whether a lies lower.</summary>
    public static bool operator <(WrittenNote a, WrittenNote b) => a.Midi < b.Midi;

    /// <summary>Whether a lies higher.</summary>
    public static bool operator >(WrittenNote a, WrittenNote b) => a.Midi > b.Midi;

    /// <summary>Whether a does not lie higher.</summary>
    public static bool operator <=(WrittenNote a, WrittenNote b) => a.Midi <= b.Midi;

    /// <summary>Whether a does not lie lower.</summary>
    public static bool operator >=(WrittenNote a, WrittenNote b) => a.Midi >= b.Midi;

    /// <summary>Name with octave, sharps for raised keys, middle C = C4 (ISO 16): "F#4".</summary>
    public override string ToString() => NoteText.Of(Midi);
}

/// <summary>
/// The pitch heard from a bell, half the frequency of its nominal, as a MIDI number (A4 = 69, ISO 16).
/// </summary>
public readonly record struct StrikeNote : IComparable<StrikeNote>
{
    private StrikeNote(int midi) => Midi = midi;

    /// <summary>The MIDI number of the strike note, 0..127.</summary>
    public int Midi { get; }

    /// <summary>The tone without its octave.</summary>
    public PitchClass PitchClass => PitchClass.Of(Midi);

    /// <summary>The strike note with a MIDI number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside 0..127.</exception>
    public static StrikeNote AtMidi(int midi) => midi is >= 0 and <= 127
        ? new StrikeNote(midi)
        : throw new ArgumentOutOfRangeException(nameof(midi), midi, "a MIDI note lies within 0..127");

    /// <inheritdoc/>
    public int CompareTo(StrikeNote other) => Midi.CompareTo(other.Midi);

    /// <summary>Name with octave, C4 = 261.6 Hz at A4 = 440 Hz: "F#4".</summary>
    public override string ToString() => NoteText.Of(Midi);
}

internal static class NoteText
{
    private static readonly string[] Names = ["C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"];

    public static string Of(int midi) => Names[midi % 12] + ((midi / 12) - 1);
}
