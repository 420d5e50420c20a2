using System.Buffers.Binary;
using System.Text;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Midi;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Midi;

/// <summary>Writes small MIDI files byte by byte, from the standard and without a library, and reads them.</summary>
internal static class MidiBytes
{
    /// <summary>A whole file.</summary>
    public static byte[] File(int format, int division, params byte[][] tracks) =>
        [.. Head(format, tracks.Length, division), .. tracks.SelectMany(t => Chunk("MTrk", t))];

    public static byte[] Head(int format, int tracks, int division) => Chunk("MThd", [.. Two(format), .. Two(tracks), .. Two(division)]);

    public static byte[] Chunk(string kind, byte[] content)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, content.Length);
        return [.. Encoding.ASCII.GetBytes(kind), .. length, .. content];
    }

    /// <summary>A track of events at ticks, with its end; of events at one tick those given first come first.</summary>
    public static byte[] Track(params IEnumerable<(long Tick, byte[] Event)> events)
    {
        var bytes = new List<byte>();
        var before = 0L;
        foreach (var (tick, data) in events.OrderBy(e => e.Tick).Append((events.Select(e => e.Tick).Append(0).Max(), [0xFF, 0x2F, 0])))
        {
            bytes.AddRange([.. Quantity(tick - before), .. data]);
            before = tick;
        }

        return [.. bytes];
    }

    /// <summary>A note with its end.</summary>
    public static IEnumerable<(long Tick, byte[] Event)> Note(int pitch, long on, long off, int channel = 1) =>
        [(on, [(byte)(0x8F + channel), (byte)pitch, 80]), (off, [(byte)(0x7F + channel), (byte)pitch, 0])];

    public static (long Tick, byte[] Event) Meta(long tick, byte type, params byte[] data) => (tick, [0xFF, type, .. Quantity(data.Length), .. data]);

    public static (long Tick, byte[] Event) Name(string name) => Meta(0, 0x03, Encoding.UTF8.GetBytes(name));

    public static (long Tick, byte[] Event) Metre(long tick, int upper, int lower) => Meta(tick, 0x58, (byte)upper, (byte)int.Log2(lower), 24, 8);

    public static (long Tick, byte[] Event) Speed(long tick, int microseconds) => Meta(tick, 0x51, (byte)(microseconds >> 16), (byte)(microseconds >> 8), (byte)microseconds);

    public static (long Tick, byte[] Event) Key(long tick, int sharps, bool isMinor = false) => Meta(tick, 0x59, (byte)sharps, (byte)(isMinor ? 1 : 0));

    public static byte[] Quantity(long value)
    {
        byte[] last = [(byte)(value & 0x7F)];
        for (value >>= 7; value > 0; value >>= 7)
        {
            last = [(byte)(0x80 | (value & 0x7F)), .. last];
        }

        return last;
    }

    public static Reading<Passage> Read(byte[] file) => MidiReader.Read("quay.mid", file);

    public static Reading<Passage>.Accepted Accepted(byte[] file) => Assert.IsType<Reading<Passage>.Accepted>(Read(file));

    /// <summary>The passage of a file that is read without a word.</summary>
    public static Passage Clean(byte[] file)
    {
        var accepted = Accepted(file);
        Assert.Empty(accepted.Warnings);
        return accepted.Value;
    }

    public static string Problem(byte[] file) => Assert.Single(Assert.IsType<Reading<Passage>.Refused>(Read(file)).Problems).ToString();

    /// <summary>The notes of a voice as heard: "C5 0 +1" begins at 0 and lasts a quarter.</summary>
    public static string[] Heard(Passage passage, int voice = 0) =>
        [.. passage.Heard(passage.Voices[voice]).Select(n => $"{n.Note} {n.Start} +{n.Length}")];

    private static byte[] Two(int number) => [(byte)(number >> 8), (byte)number];
}
