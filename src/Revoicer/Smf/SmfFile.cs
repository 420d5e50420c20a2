using Revoicer.Music;

namespace Revoicer.Smf;

/// <summary>A note begins or ends.</summary>
/// <param name="Tick">Where, from the start of the file.</param>
/// <param name="Channel">1..16.</param>
/// <param name="Pitch">Its number, 0..127, middle C = 60.</param>
/// <param name="Velocity">How hard it begins, 1..127; 0 where it ends.</param>
internal readonly record struct NoteEdge(long Tick, int Channel, int Pitch, int Velocity)
{
    /// <summary>Whether it begins.</summary>
    public bool IsOn => Velocity > 0;
}

/// <summary>From a tick on a channel has this program, 0..127.</summary>
internal readonly record struct ProgramEvent(long Tick, int Channel, int Program);

/// <summary>From a tick on a quarter note lasts so many microseconds, 1..0xFFFFFF.</summary>
internal readonly record struct SpeedEvent(long Tick, int Microseconds);

/// <summary>From a tick on this metre holds, with a click of the metronome every so many MIDI clocks, 0..255.</summary>
internal readonly record struct MetreEvent(long Tick, Meter Meter, int Clocks);

/// <summary>From a tick on this key holds.</summary>
internal readonly record struct KeyEvent(long Tick, KeySignature Key);

/// <summary>What one track of a file says, each list in order of time.</summary>
/// <param name="End">The tick of its end.</param>
internal sealed record SmfTrack(long End)
{
    /// <summary>Its name, or the title in a first track; null where it has none.</summary>
    public string? Name { get; init; }

    /// <summary>Its key signatures.</summary>
    public IReadOnlyList<KeyEvent> Keys { get; init; } = [];

    /// <summary>Its tempi.</summary>
    public IReadOnlyList<SpeedEvent> Speeds { get; init; } = [];

    /// <summary>Its time signatures.</summary>
    public IReadOnlyList<MetreEvent> Metres { get; init; } = [];

    /// <summary>The programs of its channels.</summary>
    public IReadOnlyList<ProgramEvent> Programs { get; init; } = [];

    /// <summary>Beginnings and ends of its notes; of those at one tick in the order of the file.</summary>
    public IReadOnlyList<NoteEdge> Edges { get; init; } = [];
}

/// <summary>What a Standard MIDI File says.</summary>
/// <param name="Format">0 for one track that holds all, 1 for tracks side by side.</param>
/// <param name="Division">Ticks of a quarter, 1..32767.</param>
/// <param name="Tracks">Its tracks; at least one.</param>
internal sealed record SmfFile(int Format, int Division, IReadOnlyList<SmfTrack> Tracks);
