using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// What every clash is measured by: C4 E4 G4 (strike notes at A4 = 440 Hz) on default bells, struck together, heard as
/// the chord of C major. It is the same for every tower.
/// </summary>
internal sealed class Reference
{
    private static readonly Items<Bell> Bells = new[] { 60, 64, 67 }.Select(Default).ToItems();

    private static readonly ChordClasses Chord = new(
        PitchClassSet.Of(Bells.Select(b => b.StrikeNote.PitchClass)),
        Bells[1].StrikeNote.PitchClass);

    private readonly DoseTables _tables;

    public Reference(Fade fade) => _tables = new DoseTables(Bells, fade);

    /// <summary>D + 0.25 C over a time from the stroke, raw.</summary>
    public double Within(Seconds length)
    {
        var sum = 0.0;
        for (var bell = 0; bell < Bells.Count; bell++)
        {
            sum += Contradiction.Weight * _tables.Contradiction(bell, Chord, Seconds.Zero, length);
            for (var higher = bell + 1; higher < Bells.Count; higher++)
            {
                sum += _tables.RoughnessWithin(bell, higher, Seconds.Zero, Seconds.Zero, length);
            }
        }

        return sum;
    }

    /// <summary>A default bell by the MIDI number of its strike note, at A4 = 440 Hz, on the key of a concert-pitch instrument.</summary>
    public static Bell Default(int strikeMidi) => BellLaw.Default.BellAt(
        WrittenNote.AtMidi(strikeMidi - 12),
        StrikeNote.AtMidi(strikeMidi),
        Tuning.Concert.Of(StrikeNote.AtMidi(strikeMidi)),
        Decibels.Zero);
}
