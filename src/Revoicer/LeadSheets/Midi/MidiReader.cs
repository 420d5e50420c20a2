using Revoicer.Smf;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Midi;

/// <summary>
/// Reads a passage from a Standard MIDI File of format 0 or 1 (MIDI Manufacturers Association, 1996); docs/files.md says what
/// is read, passed over and refused.
/// </summary>
public static class MidiReader
{
    /// <summary>
    /// Reads all notes, a voice for each channel of each track, on the grid that fits them. The numbers of notes are taken as
    /// written pitch, middle C = 60. There are no chord symbols.
    /// </summary>
    /// <param name="fileName">The file's name as messages give it; without its ending it is the title where there is none.</param>
    /// <param name="file">
    /// The file's bytes, at most 4 MiB; at most 20,000 bars, 100,000 quarters, 100 voices and 100,000 notes.
    /// </param>
    /// <returns>
    /// The passage with warnings, or refused with what stood in the way and the byte at which it stands.
    /// </returns>
    public static Reading<Passage> Read(string fileName, byte[] file)
    {
        var remarks = new Remarks();
        var whole = Place.WholeFile(fileName);
        return SmfReading.Read(file, whole, remarks) is { } read && new PassageMaking(read, whole, remarks).Make() is { } passage && !remarks.HasProblems
            ? new Reading<Passage>.Accepted(passage, remarks.Warnings)
            : new Reading<Passage>.Refused(remarks.Problems);
    }
}
