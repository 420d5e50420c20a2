using System.Text;
using NAudio.Midi;
using Revoicer.Music;

namespace Revoicer.Smf;

/// <summary>Writes a Standard MIDI File by the MIDI library.</summary>
internal static class SmfWriting
{
    private const int ThirtySecondsInQuarter = 8;

    /// <summary>
    /// The bytes of a file. Events of one tick stand in the order name, key, tempo, metre, program, notes; notes in the order in
    /// which they are given.
    /// </summary>
    public static byte[] Bytes(SmfFile file)
    {
        var events = new MidiEventCollection(file.Format, file.Division);
        foreach (var track in file.Tracks)
        {
            events.AddTrack([.. Events(track).OrderBy(e => e.AbsoluteTime), new MetaEvent(MetaEventType.EndTrack, 0, track.End)]);
        }

        using var stream = new MemoryStream();
        MidiFile.Export(stream, events);
        return stream.ToArray();
    }

    private static IEnumerable<MidiEvent> Events(SmfTrack track) =>
    [
        .. track.Name is { } name ? [Name(name)] : Array.Empty<MidiEvent>(),
        .. track.Keys.Select(Key),
        .. track.Speeds.Select(s => new TempoEvent(s.Microseconds, s.Tick)),
        .. track.Metres.Select(m => new TimeSignatureEvent(m.Tick, m.Meter.Upper, int.Log2(m.Meter.Lower), m.Clocks, ThirtySecondsInQuarter)),
        .. track.Programs.Select(p => new PatchChangeEvent(p.Tick, p.Channel, p.Program)),
        .. track.Edges.Select(e => new NoteEvent(e.Tick, e.Channel, e.IsOn ? MidiCommandCode.NoteOn : MidiCommandCode.NoteOff, e.Pitch, e.Velocity)),
    ];

    // UTF-8; the library would write Latin-1 and drop the rest.
    private static TextEvent Name(string name) => new("", MetaEventType.SequenceTrackName, 0) { Data = Encoding.UTF8.GetBytes(name) };

    // A key of more than seven accidentals has no code in the file; it is respelled. The file knows major and minor only: a
    // church mode keeps its signature, and is called by its third.
    private static KeySignatureEvent Key(KeyEvent change)
    {
        var spelled = Math.Abs(change.Key.Fifths) <= 7 ? change.Key : change.Key.Moved(0);
        return new KeySignatureEvent(spelled.Fifths, spelled.IsMinor ? 1 : 0, change.Tick);
    }
}
