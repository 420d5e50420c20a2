using NAudio.Midi;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Midi;

/// <summary>The events of a file as the MIDI library reads them; nothing else here knows that library.</summary>
internal static class LibraryEvents
{
    private const int LongestName = 200;

    /// <summary>The tracks of a file; null, with a problem told, where the library refuses it.</summary>
    /// <param name="file">The bytes, checked and written plainly.</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes the problem.</param>
    public static IReadOnlyList<TrackEvents>? Read(byte[] file, Place whole, Remarks remarks)
    {
        try
        {
            using var stream = new MemoryStream(file);
            var midi = new MidiFile(stream, strictChecking: false);
            return [.. Enumerable.Range(0, midi.Tracks).Select(i => Track(midi.Events[i]))];
        }
        catch (Exception e) when (e is FormatException or IOException or ArgumentException or InvalidOperationException)
        {
            // All that the library was seen to throw on broken files, and their kin.
            remarks.Refuse(whole, "the file is whole, and yet its events cannot be read", "a Standard MIDI File; export it again");
            return null;
        }
    }

    private static TrackEvents Track(IList<MidiEvent> events) => new(
        events.OfType<TextEvent>().Where(e => e.MetaEventType == MetaEventType.SequenceTrackName).Select(e => Name(e.Data)).FirstOrDefault(n => n.Length > 0),
        [.. events.OfType<NoteEvent>().Select(e => new NoteEdge(e.AbsoluteTime, e.Channel, e.NoteNumber, !MidiEvent.IsNoteOff(e)))],
        [.. events.OfType<TempoEvent>().Select(e => new SpeedEvent(e.AbsoluteTime, e.MicrosecondsPerQuarterNote))],
        [.. events.OfType<TimeSignatureEvent>().Select(e => new MetreEvent(e.AbsoluteTime, new Meter(e.Numerator, 1 << e.Denominator)))],
        [.. events.OfType<KeySignatureEvent>().Select(e => new KeyEvent(e.AbsoluteTime, Key(e.SharpsFlats, e.MajorMinor)))],
        events.Count == 0 ? 0 : events[^1].AbsoluteTime);

    // The standard asks for ASCII; files have UTF-8 or Windows-1252 as well. Control characters end at a blank.
    private static string Name(byte[] text)
    {
        var plain = new string([.. SheetBytes.Decode(text).Text.Select(c => Quoted.IsVisible(c) ? c : ' ')]);
        var name = string.Join(' ', plain.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return name.Length > LongestName ? name[..LongestName].TrimEnd() : name;
    }

    // The signature's major keynote lies so many fifths from C, that of its minor key three more.
    private static KeySignature Key(int sharps, int minor) => minor == 1
        ? new KeySignature(NoteName.AtFifths(sharps + 3), Mode.Minor)
        : new KeySignature(NoteName.AtFifths(sharps), Mode.Major);
}
