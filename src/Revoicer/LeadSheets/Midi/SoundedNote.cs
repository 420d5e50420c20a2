namespace Revoicer.LeadSheets.Midi;

/// <summary>A note of a file.</summary>
/// <param name="Pitch">Its number, 0..127, middle C = 60.</param>
/// <param name="On">The tick at which it begins.</param>
/// <param name="Off">The tick at which it ends, not before it begins.</param>
internal sealed record SoundedNote(int Pitch, long On, long Off);
