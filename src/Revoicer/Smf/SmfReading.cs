using NAudio.Midi;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.Smf;

/// <summary>Reads a Standard MIDI File: it is checked first, repaired where it has to be, and read by the MIDI library.</summary>
internal static class SmfReading
{
    private const int LongestName = 200;

    /// <summary>What the file says; null, with the problem in the remarks, where it cannot be read.</summary>
    /// <param name="file">The bytes, at most 4 MiB.</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static SmfFile? Read(byte[] file, Place whole, Remarks remarks) =>
        FileCheck.Of(file, whole, remarks) is { } found ? ByLibrary(found.Sound(), whole, remarks) : null;

    /// <summary>The same of bytes that have been checked and are sound.</summary>
    internal static SmfFile? ByLibrary(byte[] sound, Place whole, Remarks remarks)
    {
        try
        {
            using var stream = new MemoryStream(sound);
            var file = new MidiFile(stream, strictChecking: false);
            return new SmfFile(file.FileFormat, file.DeltaTicksPerQuarterNote, [.. file.Events.Select(Track)]);
        }
        catch (Exception e) when (e is FormatException or IOException or ArgumentException or InvalidOperationException)
        {
            // All that the library was seen to throw on broken files, and their kin.
            remarks.Refuse(whole, "the file is whole, and yet its events cannot be read", "a Standard MIDI File; export it again");
            return null;
        }
    }

    private static SmfTrack Track(IList<MidiEvent> events) => new(events.Count == 0 ? 0 : events[^1].AbsoluteTime)
    {
        Name = events.OfType<TextEvent>().Where(e => e.MetaEventType == MetaEventType.SequenceTrackName).Select(e => Name(e.Data)).FirstOrDefault(n => n.Length > 0),
        Keys = [.. events.OfType<KeySignatureEvent>().Select(e => new KeyEvent(e.AbsoluteTime, Key(e.SharpsFlats, e.MajorMinor)))],
        Speeds = [.. events.OfType<TempoEvent>().Select(e => new SpeedEvent(e.AbsoluteTime, e.MicrosecondsPerQuarterNote))],
        Metres = [.. events.OfType<TimeSignatureEvent>().Select(e => new MetreEvent(e.AbsoluteTime, new Meter(e.Numerator, 1 << e.Denominator), e.TicksInMetronomeClick))],
        Programs = [.. events.OfType<PatchChangeEvent>().Select(e => new ProgramEvent(e.AbsoluteTime, e.Channel, e.Patch))],

        // The library counts the pressure on a key among the notes.
        Edges = [.. events.OfType<NoteEvent>().Where(e => e.CommandCode != MidiCommandCode.KeyAfterTouch).Select(e => new NoteEdge(e.AbsoluteTime, e.Channel, e.NoteNumber, MidiEvent.IsNoteOff(e) ? 0 : e.Velocity))],
    };

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
