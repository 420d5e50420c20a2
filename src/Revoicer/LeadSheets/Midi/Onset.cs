namespace Revoicer.LeadSheets.Midi;

/// <summary>All notes of a file that begin at one tick.</summary>
/// <param name="Tick">The tick.</param>
/// <param name="Lowest">The lowest pitch, 0..127.</param>
/// <param name="Highest">The highest pitch, 0..127.</param>
/// <param name="Ends">The tick at which the first of them ends.</param>
/// <param name="Count">How many there are.</param>
internal sealed record Onset(long Tick, int Lowest, int Highest, long Ends, int Count)
{
    /// <summary>The onsets of all notes, in order of time.</summary>
    public static IReadOnlyList<Onset> All(IEnumerable<SoundedNote> notes) =>
    [
        .. notes.GroupBy(n => n.On)
            .Select(same => new Onset(same.Key, same.Min(n => n.Pitch), same.Max(n => n.Pitch), same.Min(n => n.Off), same.Count()))
            .OrderBy(o => o.Tick),
    ];
}
