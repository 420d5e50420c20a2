using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Smf;

namespace Revoicer.Writing.Midi;

/// <summary>The first track of a MIDI file: title, key, tempi and metres.</summary>
internal static class ConductorTrack
{
    /// <summary>The track of an arrangement.</summary>
    public static SmfTrack Of(Arrangement arrangement, TickClock clock, MidiPitch pitch) => new(clock.End)
    {
        Name = arrangement.Title,
        Keys = (pitch == MidiPitch.Written ? arrangement.WrittenKey : arrangement.SoundingKey) is { } key ? [new KeyEvent(0, key)] : [],
        Speeds = [.. arrangement.Tempi.Changes.Select(c => Speed(c, clock))],
        Metres = [.. Metres(arrangement, clock)],
    };

    private static SpeedEvent Speed(TempoChange change, TickClock clock)
    {
        var microseconds = Math.Round(SmfNumbers.Minute / change.Tempo.QuartersPerMinute);
        if (microseconds is not (>= 1 and <= SmfNumbers.LongestQuarter))
        {
            throw new ArgumentOutOfRangeException(
                nameof(change),
                change.Tempo.QuartersPerMinute,
                "a MIDI file holds from 3.58 to 60000000 quarter notes a minute");
        }

        // The opening speed holds from the lead-in on.
        return new SpeedEvent(change.From == Beats.Zero ? 0 : clock.At(change.From), (int)microseconds);
    }

    // A bar that its metre does not fill (a pickup) has a signature of its own length, so that all bar lines fall right.
    private static IEnumerable<MetreEvent> Metres(Arrangement arrangement, TickClock clock)
    {
        Meter? running = null;
        if (clock.LeadInBeats > 0)
        {
            var beat = new Meter(clock.Meter.IsCompound ? 3 : 1, clock.Meter.Lower);
            running = beat;
            yield return new MetreEvent(0, beat, Clocks(clock.Meter));
        }

        foreach (var bar in arrangement.Bars)
        {
            var signature = Signature(bar.Length, bar.Meter);
            if (signature is { } found && signature != running)
            {
                yield return new MetreEvent(clock.At(bar.Start), found, Clocks(bar.Meter));
            }

            running = signature;
        }
    }

    // How a length is written as a signature, in the metre's own note value or a shorter one; null for a length that
    // only tuplets fill or that is too long.
    private static Meter? Signature(Beats length, Meter meter)
    {
        for (var lower = meter.Lower; lower <= 128; lower *= 2)
        {
            var values = length * lower / 4;
            if (values.Denominator == 1)
            {
                return values.Numerator is >= 1 and <= SmfNumbers.LargestNumerator ? new Meter((int)values.Numerator, lower) : null;
            }
        }

        return null;
    }

    // The metronome clicks with the beat that is counted.
    private static int Clocks(Meter meter) => Math.Clamp((int)Math.Round(SmfNumbers.ClocksInQuarter * meter.Beat.Quarters), 1, 255);
}
