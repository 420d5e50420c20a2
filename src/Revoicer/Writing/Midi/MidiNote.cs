using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Midi;

/// <summary>A stroke as a note of a MIDI file.</summary>
/// <param name="IsPedal">Whether it stands in the pedal track.</param>
/// <param name="Pitch">The note number, 0..127.</param>
/// <param name="Velocity">How hard, 1..127.</param>
/// <param name="On">The tick of its note-on.</param>
/// <param name="Off">The tick of its note-off, later than <paramref name="On"/>.</param>
internal sealed record MidiNote(bool IsPedal, int Pitch, int Velocity, long On, long Off)
{
    // A bell has no damper, but a synthesizer has few voices (24 in General MIDI 1, from memory): at six strokes a second
    // 4 s keep within them. Estimate.
    private static readonly Seconds Ring = new(4);

    // The velocity of a stroke of 0 dB: what lies 8 dB below the hardest. Our choice.
    private const int OrdinaryVelocity = 80;

    /// <summary>All strokes as notes, by tick and pitch.</summary>
    public static IReadOnlyList<MidiNote> All(Arrangement arrangement, TickClock clock, MidiPitch pitch) =>
    [
        .. arrangement.Strokes
            .GroupBy(s => s.Note)
            .SelectMany(bell => OfOneBell([.. bell], clock, PitchOf(bell.Key, arrangement.Tower.Transposition, pitch)))
            .OrderBy(n => n.On).ThenBy(n => n.Pitch),
    ];

    /// <summary>
    /// The velocity for a touch: amplitude goes with the square of velocity, 40 log10(v1/v2) dB between two velocities
    /// (the response that General MIDI 2 and Downloadable Sounds recommend, from memory).
    /// </summary>
    public static int VelocityOf(Decibels level) =>
        (int)Math.Clamp(Math.Round(OrdinaryVelocity * Math.Pow(10, level.Value / 40)), 1, 127);

    // Pedal and baton of one key are one bell, so either ends the note of the other. Two strokes of a bell on one tick
    // cannot be told apart by ear, nor written: the louder stays.
    private static IEnumerable<MidiNote> OfOneBell(Stroke[] strokes, TickClock clock, int pitch)
    {
        var struck = strokes
            .GroupBy(clock.At)
            .OrderBy(tick => tick.Key)
            .Select(tick => (Tick: tick.Key, Stroke: tick.MaxBy(s => s.Level)!))
            .ToArray();
        for (var i = 0; i < struck.Length; i++)
        {
            var (tick, stroke) = struck[i];
            var next = i + 1 < struck.Length ? struck[i + 1].Tick : clock.End;
            var off = Math.Min(next, clock.After(stroke, Ring));
            yield return new MidiNote(stroke.IsPedal, pitch, VelocityOf(stroke.Level), tick, off);
        }
    }

    private static int PitchOf(WrittenNote note, Transposition transposition, MidiPitch pitch) =>
        pitch == MidiPitch.Written ? note.Midi : (note + transposition).Midi;
}
