using Revoicer.Music;

namespace Revoicer.LeadSheets.Midi;

/// <summary>A note begins or ends.</summary>
/// <param name="Tick">Where, from the start of the file.</param>
/// <param name="Channel">1..16.</param>
/// <param name="Pitch">Its number, 0..127, middle C = 60.</param>
/// <param name="IsOn">Whether it begins.</param>
internal readonly record struct NoteEdge(long Tick, int Channel, int Pitch, bool IsOn);

/// <summary>From a tick on a quarter note lasts so many microseconds.</summary>
internal readonly record struct SpeedEvent(long Tick, int Microseconds);

/// <summary>From a tick on this metre holds.</summary>
internal readonly record struct MetreEvent(long Tick, Meter Meter);

/// <summary>From a tick on this key holds.</summary>
internal readonly record struct KeyEvent(long Tick, KeySignature Key);

/// <summary>What one track of a file says, each list in order of time.</summary>
/// <param name="Name">Its name, or the title in a first track; null where it has none.</param>
/// <param name="Edges">Beginnings and ends of its notes.</param>
/// <param name="Speeds">Its tempi.</param>
/// <param name="Metres">Its time signatures.</param>
/// <param name="Keys">Its key signatures.</param>
/// <param name="End">The tick of its end.</param>
internal sealed record TrackEvents(
    string? Name,
    IReadOnlyList<NoteEdge> Edges,
    IReadOnlyList<SpeedEvent> Speeds,
    IReadOnlyList<MetreEvent> Metres,
    IReadOnlyList<KeyEvent> Keys,
    long End);
