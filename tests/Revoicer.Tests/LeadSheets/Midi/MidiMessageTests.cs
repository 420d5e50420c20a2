using Revoicer.Smf;
using Revoicer.Text;
using Xunit;
using static Revoicer.Tests.LeadSheets.Midi.MidiBytes;

namespace Revoicer.Tests.LeadSheets.Midi;

/// <summary>What is wrong with a file is told with the byte at which it stands.</summary>
public sealed class MidiMessageTests
{
    private static readonly byte[] Good = File(0, 96, Track(Note(72, 0, 96)));

    public static TheoryData<byte[], string> Broken => new()
    {
        { [], "byte 0 does not begin a MIDI file; expected the four letters MThd" },
        { "RIFF    RMID"u8.ToArray(), "byte 0 does not begin a MIDI file; expected the four letters MThd" },
        { Good[..12], "the head at byte 0 is not whole; expected six bytes: format, number of tracks, division" },
        { File(2, 96, Track(Note(72, 0, 96))), "the file has format 2 (byte 8); expected format 0 or 1; patterns of format 2 follow each other in no known order: export the piece again" },
        { File(0, 96, [], []), "the file has format 0 and 2 tracks (byte 10); expected one track, or format 1" },
        { Head(1, 0, 96), "the file has 0 tracks (byte 10); expected 1 to 1000" },
        { Head(1, 65535, 96), "the file has 65535 tracks (byte 10); expected 1 to 1000" },
        { File(0, 0xE728, Track(Note(72, 0, 96))), "the file counts time in frames of film (byte 12); expected ticks of a quarter note, from which bars can be told: export it with musical time" },
        { File(0, 0, Track(Note(72, 0, 96))), "a quarter note has 0 ticks (byte 12); expected 1 to 32767" },
        { Good[..17], "the file ends inside the chunk at byte 14, with 0 of 1 tracks read; expected the whole file; export or copy it again" },
        { Good[..25], "the chunk 'MTrk' at byte 14 has 12 bytes by its length, and 3 follow; expected the whole file; export or copy it again" },
        { Head(1, 1, 96), "the file ends at byte 14 with 0 of 1 tracks; expected the whole file; export or copy it again" },
        { File(0, 96, [0x81, 0x80, 0x80, 0x80, 0x00, 0xFF, 0x2F, 0]), "no time before an event (byte 22); expected a quantity of one to four bytes" },
        { File(0, 96, [0, 0x90, 72, 80, 0x81]), "no time before an event (byte 26); expected a quantity of one to four bytes" },
        { File(0, 96, [0]), "the track ends between a time and its event (byte 23); expected the whole file; export or copy it again" },
        { File(0, 96, [0, 72, 80]), "data without a status (byte 23); expected a byte from 80 to FF, hexadecimal" },
        { File(0, 96, [0, 0xF4]), "the status F4 has no place in a file (byte 23); expected an event of a channel, system exclusive or meta" },
        { File(0, 96, [0, 0x90, 72]), "the track ends inside an event (byte 23); expected the whole file; export or copy it again" },
        { File(0, 96, [0, 0x90, 200, 80]), "an event 90 with data above 7F (byte 23); expected data bytes from 00 to 7F, hexadecimal" },
        { File(0, 96, [0, 0xF0, 0x87, 0x7F, 1]), "a system exclusive event is longer than its track (byte 23); expected the whole file; export or copy it again" },
        { File(0, 96, [0, 0xFF, 1, 0xFF, 0xFF, 0xFF, 0x7F, 1]), "a meta event is longer than its track (byte 23); expected the whole file; export or copy it again" },
        { File(0, 96, Track()), "the file has no notes; expected at least one note on another channel than 10" },
        { File(0, 96, Track(Note(38, 0, 96, 10))), "the file has no notes but 1 note of percussion on channel 10; expected at least one note on another channel than 10" },
        { File(0, 1, Track(Note(72, 0, 100_001))), "a piece of more than 100000 quarters; expected a shorter one" },
        { File(0, 1, Track([Metre(0, 1, 64), .. Note(72, 0, 5000)])), "more bars than one sheet may have; expected at most 20000" },
        { File(1, 96, [.. Enumerable.Range(0, 101).Select(_ => Track(Note(72, 0, 96)))]), "the file has 101 voices, counting each channel of each track; expected at most 100" },
        { File(0, 1, Track([.. Enumerable.Range(0, 120).SelectMany(p => Note(p, 0, 10_000)), Metre(0, 1, 4)])), "notes that last over 1200000 bars in all; expected at most 300000" },
        { File(0, 24, Track([.. Enumerable.Range(0, 10_001).Select(i => Speed(i, 500_000 + i)), .. Note(72, 0, 12_000)])), "10001 changes of tempo; expected at most 10000" },
    };

    [Theory]
    [MemberData(nameof(Broken), DisableDiscoveryEnumeration = true)]
    public void What_cannot_be_read_is_told_in_a_sentence(byte[] file, string sentence) => Assert.Equal($"quay.mid: {sentence}\n", Problem(file));

    [Fact]
    public void A_file_of_more_notes_than_any_piece_has_is_refused()
    {
        var notes = Enumerable.Range(0, 100_001).SelectMany(_ => new byte[] { 0, 72, 80 });
        Assert.Equal("quay.mid: more than 100000 notes (byte 300024); expected a shorter piece\n", Problem(File(0, 96, [0, 0x90, 72, 80, .. notes.Skip(3)])));
    }

    public static TheoryData<byte[], string> Odd => new()
    {
        { [.. Good, 0], "what follows the last track, from byte 34 on, is passed over" },
        { [.. Good, .. Chunk("MTrk", Track())], "what follows the last track, from byte 34 on, is passed over" },
        { File(0, 96, [.. Track(Note(72, 0, 96)), 1, 2]), "what follows the end of the track is passed over (byte 34)" },
        { File(0, 96, Track(Note(72, 0, 96))[..^4]), "the track has no end mark and ends with its last event (byte 30)" },
        { File(0, 96, [0, 0x90, 72, 80, 0, 0xFF, 1, 0, 96, 72, 0, 0, 0xFF, 0x2F, 0]), "running status goes on behind a meta or system exclusive event and is read so" },
        { File(0, 96, Track([Meta(0, 0x51, 1), .. Note(72, 0, 96)])), "a tempo cannot be read and is passed over (byte 23)" },
        { File(0, 96, Track([Meta(0, 0x51, 0, 0, 0), .. Note(72, 0, 96)])), "a tempo cannot be read and is passed over (byte 23)" },
        { File(0, 96, Track([Speed(0, 16_000_000), .. Note(72, 0, 96)])), "a tempo that nobody plays is passed over" },
        { File(0, 96, Track([Metre(0, 0, 4), .. Note(72, 0, 96)])), "a time signature cannot be read and is passed over (byte 23)" },
        { File(0, 96, Track([Metre(0, 4, 128), .. Note(72, 0, 96)])), "a time signature cannot be read and is passed over (byte 23)" },
        { File(0, 96, Track([Key(0, 8), .. Note(72, 0, 96)])), "a key signature cannot be read and is passed over (byte 23)" },
        { File(0, 96, Track([Metre(96, 4, 4), .. Note(72, 0, 96)])), "the file has no metre at its beginning; 4/4 is assumed there" },
        { File(0, 96, Track([Speed(96, 500_000), .. Note(72, 0, 192)])), "the file has no tempo at its beginning; 120 quarters a minute are assumed, as the standard says" },
    };

    [Theory]
    [MemberData(nameof(Odd), DisableDiscoveryEnumeration = true)]
    public void What_is_odd_is_read_and_told(byte[] file, string found)
    {
        var accepted = Accepted(file);
        Assert.Contains(found, accepted.Warnings.Select(w => w.Found));
        Assert.StartsWith("C5 0 +", Heard(accepted.Value)[0], StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_library_refuses_is_told_as_well()
    {
        // Past the walk, which lets none of these through.
        foreach (var file in new byte[][] { [], Good[..20], File(0, 96, [0, 0xF7, 0]), File(0, 96, [0, 0x90, 200, 200]) })
        {
            var remarks = new Remarks();
            Assert.Null(SmfReading.ByLibrary(file, Place.WholeFile("quay.mid"), remarks));
            Assert.Equal("the file is whole, and yet its events cannot be read", Assert.Single(remarks.Problems).Found);
        }
    }
}
