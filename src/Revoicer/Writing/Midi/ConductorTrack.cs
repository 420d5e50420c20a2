using System.Text;
using NAudio.Midi;
using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.Midi;

/// <summary>The first track of a MIDI file: title, key, tempi and metres.</summary>
internal static class ConductorTrack
{
    // Standard MIDI Files 1.0: microseconds a quarter in three bytes; a numerator in one.
    private const int LongestQuarter = 0xFF_FFFF;
    private const int LargestNumerator = 255;

    // 24 MIDI clocks and eight 32nd notes make a quarter.
    private const int ClocksInQuarter = 24;
    private const int ThirtySecondsInQuarter = 8;

    /// <summary>The track's events in order, its end included.</summary>
    public static List<MidiEvent> Of(Arrangement arrangement, TickClock clock, MidiPitch pitch)
    {
        var events = new List<MidiEvent> { Name(arrangement.Title) };
        if ((pitch == MidiPitch.Written ? arrangement.WrittenKey : arrangement.SoundingKey) is { } key)
        {
            events.Add(Key(key));
        }

        events.AddRange(arrangement.Tempi.Changes.Select(c => Speed(c, clock)));
        events.AddRange(Metres(arrangement, clock));
        events.Add(new MetaEvent(MetaEventType.EndTrack, 0, clock.End));
        return [.. events.OrderBy(e => e.AbsoluteTime)];
    }

    /// <summary>A track's name in UTF-8; the library would write Latin-1 and drop the rest.</summary>
    public static TextEvent Name(string name) =>
        new("", MetaEventType.SequenceTrackName, 0) { Data = Encoding.UTF8.GetBytes(name) };

    private static KeySignatureEvent Key(KeySignature key)
    {
        // A key of more than seven accidentals has no code in the file; it is respelled. The file knows major and minor
        // only: a church mode keeps its signature, and is called by its third.
        var spelled = Math.Abs(key.Fifths) <= 7 ? key : key.Moved(0);
        return new KeySignatureEvent(spelled.Fifths, key.IsMinor ? 1 : 0, 0);
    }

    private static TempoEvent Speed(TempoChange change, TickClock clock)
    {
        var microseconds = Math.Round(60_000_000 / change.Tempo.QuartersPerMinute);
        if (microseconds is not (>= 1 and <= LongestQuarter))
        {
            throw new ArgumentOutOfRangeException(
                nameof(change),
                change.Tempo.QuartersPerMinute,
                "a MIDI file holds from 3.58 to 60000000 quarter notes a minute");
        }

        // The opening speed holds from the lead-in on.
        return new TempoEvent((int)microseconds, change.From == Beats.Zero ? 0 : clock.At(change.From));
    }

    // A bar that its metre does not fill (a pickup) has a signature of its own length, so that all bar lines fall right.
    private static IEnumerable<TimeSignatureEvent> Metres(Arrangement arrangement, TickClock clock)
    {
        (int Upper, int Lower)? running = null;
        if (clock.LeadInBeats > 0)
        {
            (int Upper, int Lower) beat = (clock.Meter.IsCompound ? 3 : 1, clock.Meter.Lower);
            running = beat;
            yield return Event(beat, clock.Meter, 0);
        }

        foreach (var bar in arrangement.Bars)
        {
            var signature = Signature(bar.Length, bar.Meter);
            if (signature is { } found && signature != running)
            {
                yield return Event(found, bar.Meter, clock.At(bar.Start));
            }

            running = signature;
        }
    }

    // How a length is written as a signature, in the metre's own note value or a shorter one; null for a length that
    // only tuplets fill or that is too long.
    private static (int Upper, int Lower)? Signature(Beats length, Meter meter)
    {
        for (var lower = meter.Lower; lower <= 128; lower *= 2)
        {
            var values = length * lower / 4;
            if (values.Denominator == 1)
            {
                return values.Numerator is >= 1 and <= LargestNumerator ? ((int)values.Numerator, lower) : null;
            }
        }

        return null;
    }

    private static TimeSignatureEvent Event((int Upper, int Lower) signature, Meter meter, long tick) => new(
        tick,
        signature.Upper,
        int.Log2(signature.Lower),
        Math.Clamp((int)Math.Round(ClocksInQuarter * meter.Beat.Quarters), 1, 255),
        ThirtySecondsInQuarter);
}
