using FsCheck;
using FsCheck.Xunit;
using Revoicer.LeadSheets;
using Revoicer.Smf;
using Revoicer.Tests.LeadSheets.Midi;
using Revoicer.Text;
using Revoicer.Writing.Midi;
using Xunit;
using static Revoicer.Tests.LeadSheets.Midi.MidiBytes;

namespace Revoicer.Tests.Smf;

/// <summary>A sound file goes to the library as it is; one that the library would misread is repaired first.</summary>
public sealed class SmfRepairTests
{
    private static readonly (long, byte[])[] Music = [Name("Kelp"), Metre(0, 3, 4), Speed(0, 500_000), .. Note(72, 0, 96), .. Note(74, 96, 288)];

    // Statuses and meta types as in Standard MIDI Files 1.0.
    public static TheoryData<byte[]> AsTheyAre =>
    [
        MidiWriting.Bytes(Writing.SampleArrangements.HarbourLights),
        File(0, 96, Track(Music)),
        File(1, 96, Track(Music), Track()),
        (byte[])[.. File(0, 96, Track(Music)), 0, 1, 2],
        (byte[])[.. File(0, 96, Track(Music)), .. Chunk("XFIH", [1])],
        File(0, 96, Track(Music)[..^4]),
        File(0, 96, [0, 0x90, 72, 80, 0, 0xFF, 1, 0, 96, 72, 0, 0, 0xFF, 0x2F, 0]),
        File(0, 96, Track([.. Music, (0, [0xF0, 5, 0x7E, 0x7F, 9, 1, 0xF7]), (0, [0xB0, 64, 127]), (20, [0xA0, 72, 1]), Meta(50, 0x7F), Meta(0, 0, 0, 1), Meta(0, 0x54, 1, 2, 3, 4, 5)])),
    ];

    public static TheoryData<byte[]> Repaired =>
    [
        (byte[])[.. Chunk("MThd", [0, 0, 0, 1, 0, 96, 7, 7]), .. Chunk("MTrk", Track(Music))],
        (byte[])[.. Head(0, 1, 96), .. Chunk("XFIH", [1, 2, 3]), .. Chunk("MTrk", Track(Music))],
        File(0, 96, [.. Track(Music), 0, 0x90, 60, 80, 0, 0xFF, 0x2F, 0]),
        File(0, 96, Track([.. Music, (0, [0xF0, 3, 1, 2, 3])])),
        File(0, 96, Track([.. Music, (0, [0xF0, 0])])),
        File(0, 96, Track([.. Music, (96, [0xF0, 5, 1, 0xF7, 2, 3, 0xF7])])),
        File(0, 96, Track([.. Music, (96, [0xF7, 4, 0x90, 60, 80, 0xF7])])),
        File(0, 96, Track([.. Music, Meta(96, 0), Meta(120, 0, 1, 2, 3)])),
        File(0, 96, Track([.. Music, Meta(96, 0x54, 1)])),
        File(0, 96, Track([.. Music, Meta(96, 0x58, 0, 2, 24, 8), Meta(96, 0x59, 9, 0), Meta(96, 0x51, 0, 0, 0), Meta(96, 0x51, 1)])),
        File(0, 96, [.. Track(Music)[..^1], 2, 0x90, 60]),
    ];

    [Theory]
    [MemberData(nameof(AsTheyAre), DisableDiscoveryEnumeration = true)]
    public void A_sound_file_is_read_as_it_is(byte[] file) => Assert.Same(file, Checked(file).Sound());

    [Theory]
    [MemberData(nameof(Repaired), DisableDiscoveryEnumeration = true)]
    public void What_the_library_would_misread_is_taken_out(byte[] file)
    {
        var found = Checked(file);

        Assert.False(found.IsSound);
        Assert.True(Checked(found.Sound()).IsSound);
        AssertSame(Events(File(0, 96, Track(Music))), Events(file));
    }

    [Law(Arbitrary = [typeof(MidiGens)])]
    public void Files_that_need_repair_say_what_they_say_without_it(ModelMidi model, NonEmptyArray<int> places)
    {
        var file = model.File(0);
        var (head, track) = (file[..14], file[22..]);
        foreach (var (i, place) in places.Get.Index())
        {
            // A time of 0 before each event to be taken out; an event of the model begins where a status is.
            var at = Starts(track)[Math.Abs(place % Starts(track).Length)];
            track = [.. track[..at], 0, .. Bad[i % Bad.Length], .. track[at..]];
        }

        byte[] broken = [.. head, .. Chunk("WIND", [1, 2]), .. Chunk("MTrk", track)];
        Assert.False(Checked(broken).IsSound);
        AssertSame(Events(file), Events(broken));
    }

    private static readonly byte[][] Bad = [[0xF7, 2, 0x90, 60], [0xF0, 2, 1, 2], [0xFF, 0x54, 0], [0xFF, 0x51, 1, 9], [0xFF, 0x58, 2, 1, 1], [0xF0, 3, 0xF7, 1, 0xF7]];

    // Where the times of the track's events begin, its end mark's too: an own walk, since all events have their status here.
    private static int[] Starts(byte[] track)
    {
        var starts = new List<int>();
        for (var at = 0; at < track.Length;)
        {
            starts.Add(at);
            at += 1 + Array.FindIndex(track[at..], b => b < 0x80);
            at += track[at] switch
            {
                0xFF => 3 + track[at + 2],
                0xF0 or 0xF7 => 2 + track[at + 1],
                _ => 3,
            };
        }

        return [.. starts];
    }

    private static CheckedFile Checked(byte[] file) =>
        Assert.IsType<CheckedFile>(FileCheck.Of(file, Place.WholeFile("quay.mid"), new Remarks()));

    private static SmfFile Events(byte[] file) =>
        Assert.IsType<SmfFile>(SmfReading.Read(file, Place.WholeFile("quay.mid"), new Remarks()));

    // All but the tick of the end, which what was taken out may lie behind.
    private static void AssertSame(SmfFile expected, SmfFile found)
    {
        Assert.Equal((expected.Format, expected.Division, expected.Tracks.Count), (found.Format, found.Division, found.Tracks.Count));
        foreach (var (before, after) in expected.Tracks.Zip(found.Tracks))
        {
            Assert.Equal(before.Name, after.Name);
            Assert.Equal(before.Keys, after.Keys);
            Assert.Equal(before.Speeds, after.Speeds);
            Assert.Equal(before.Metres, after.Metres);
            Assert.Equal(before.Programs, after.Programs);
            Assert.Equal(before.Edges, after.Edges);
        }
    }
}
