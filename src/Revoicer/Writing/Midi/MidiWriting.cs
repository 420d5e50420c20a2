using Revoicer.Arrangements;
using Revoicer.Smf;

namespace Revoicer.Writing.Midi;

/// <summary>Writes an arrangement as a Standard MIDI File, format 1 (MIDI Manufacturers Association, 1996).</summary>
public static class MidiWriting
{
    // General MIDI 1, 15th program: Tubular Bells; programs are counted from 0 in the file.
    private const int TubularBells = 14;

    private const int ManualChannel = 1;
    private const int PedalChannel = 2;

    /// <summary>
    /// The file's bytes: a conductor track (title, key, tempi, metres), a manual track on channel 1 and a pedal track on
    /// channel 2, both with tubular bells, at 960 ticks a quarter or the next finer division in which every place falls
    /// on a tick.
    /// </summary>
    /// <remarks>
    /// Bars stand on bar lines. Where a roll leads into the very first beat, whole beats of lead-in stand before it; else
    /// nothing does, whatever <see cref="Arrangement.Shift"/> says, so seconds in the file differ from
    /// <see cref="Playing.Stroke.At"/> by one constant. A lead is rounded to the nearest tick. A note ends when its bell
    /// is struck again, at the latest after 4 s; the tracks end two bars after the last. A stroke of 0 dB has velocity
    /// 80, others 80 x 10^(dB/40), held within 1..127. The same arrangement gives the same bytes.
    /// </remarks>
    /// <param name="arrangement">What is written; at least one bar and one tempo.</param>
    /// <param name="pitch">Whether notes stand at sounding or at written pitch.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A tempo outside 3.58 to 60,000,000 quarter notes a minute, or a strike note outside 0..127.
    /// </exception>
    public static byte[] Bytes(Arrangement arrangement, MidiPitch pitch = MidiPitch.Sounding)
    {
        var clock = TickClock.Of(arrangement);
        var notes = MidiNote.All(arrangement, clock, pitch);
        return SmfWriting.Bytes(new SmfFile(
            1,
            clock.TicksPerQuarter,
            [
                ConductorTrack.Of(arrangement, clock, pitch),
                BellTrack("Manual", ManualChannel, [.. notes.Where(n => !n.IsPedal)], clock.End),
                BellTrack("Pedal", PedalChannel, [.. notes.Where(n => n.IsPedal)], clock.End),
            ]));
    }

    // Of one tick, notes end before others begin: a bell struck again would otherwise be silenced at once.
    private static SmfTrack BellTrack(string name, int channel, IReadOnlyList<MidiNote> notes, long end) => new(end)
    {
        Name = name,
        Programs = [new ProgramEvent(0, channel, TubularBells)],
        Edges =
        [
            .. notes.Select(n => new NoteEdge(n.Off, channel, n.Pitch, 0))
                .Concat(notes.Select(n => new NoteEdge(n.On, channel, n.Pitch, n.Velocity)))
                .OrderBy(e => e.Tick)
                .ThenBy(e => e.IsOn),
        ],
    };
}
