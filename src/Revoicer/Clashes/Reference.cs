using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// What every clash is measured by: C4 E4 G4 (strike notes at A4 = 440 Hz) on default bells, struck together, heard as
/// the chord of C major. It is the same for every tower under one law of the
/// default bell.
/// </summary>
internal sealed class Reference
{
    private static readonly Items<StrikeNote> Notes = new[] { 60, 64, 67 }.Select(StrikeNote.AtMidi).ToItems();

    private static readonly ChordClasses Chord = new(PitchClassSet.Of(Notes.Select(n => n.PitchClass)), Notes[1].PitchClass);

    private readonly DoseTables _tables;

    public Reference(Fade fade, BellLaw law) => _tables = new DoseTables(Notes.Select(n => Bell(n, law)).ToItems(), fade);

    /// <summary>D + 0.25 C over a time from the stroke, raw.</summary>
    public double Within(Seconds length)
    {
        var sum = 0.0;
        for (var bell = 0; bell < Notes.Count; bell++)
        {
            sum += Contradiction.Weight * _tables.Contradiction(bell, Chord, Seconds.Zero, length);
            for (var higher = bell + 1; higher < Notes.Count; higher++)
            {
                sum += _tables.RoughnessWithin(bell, higher, Seconds.Zero, Seconds.Zero, length);
            }
        }

        return sum;
    }

    /// <summary>A default bell by the MIDI number of its strike note, at A4 = 440 Hz, on the key of a concert-pitch instrument.</summary>
    public static Bell Default(int strikeMidi) => Bell(StrikeNote.AtMidi(strikeMidi), BellLaw.Default);

    /// <summary>The same under a law.</summary>
    public static Bell Bell(StrikeNote note, BellLaw law) =>
        law.BellAt(WrittenNote.AtMidi(note.Midi - 12), note, Tuning.Concert.Of(note), Decibels.Zero);
}
