namespace Revoicer.Writing.Midi;

/// <summary>Which pitch the notes of a MIDI file stand for.</summary>
public enum MidiPitch
{
    /// <summary>The strike note, as heard from the tower.</summary>
    Sounding,

    /// <summary>The written note, as the player reads it.</summary>
    Written,
}
