using System.Buffers.Binary;
using System.Text;

namespace Revoicer.Tests.Writing.Midi;

/// <summary>An event as it stands in a file: meta events have status 0xFF and their type as the first data byte.</summary>
internal sealed record WalkedEvent(long Tick, byte Status, byte[] Data)
{
    public bool IsOn => (Status & 0xF0) == 0x90 && Data[1] > 0;

    public bool IsOff => (Status & 0xF0) == 0x80 || ((Status & 0xF0) == 0x90 && Data[1] == 0);

    public bool IsMeta(byte type) => Status == 0xFF && Data[0] == type;

    public string MetaText => Encoding.UTF8.GetString(Data.AsSpan(1));

    public int MetaNumber => Data.Skip(1).Aggregate(0, (number, b) => (number << 8) | b);
}

/// <summary>
/// A reader of Standard MIDI Files written against the specification (chunks, delta times, running status), independent of
/// the library that writes them. Whatever is not as it should be throws.
/// </summary>
internal sealed class MidiWalk
{
    private readonly byte[] _file;
    private int _at;

    private MidiWalk(byte[] file) => _file = file;

    public int Format { get; private set; }

    public int Division { get; private set; }

    public List<List<WalkedEvent>> Tracks { get; } = [];

    /// <summary>The bytes of every delta time met, in order.</summary>
    public List<byte[]> Deltas { get; } = [];

    public static MidiWalk Through(byte[] file)
    {
        var walk = new MidiWalk(file);
        walk.File();
        return walk;
    }

    private void File()
    {
        var header = Chunk("MThd");
        Format = Word(header.Start);
        var tracks = Word(header.Start + 2);
        Division = Word(header.Start + 4);
        _at = header.End;
        for (var i = 0; i < tracks; i++)
        {
            var chunk = Chunk("MTrk");
            Tracks.Add(Track(chunk.End));
        }

        if (_at != _file.Length)
        {
            throw new FormatException("bytes after the last track");
        }
    }

    private (int Start, int End) Chunk(string kind)
    {
        if (Encoding.ASCII.GetString(_file, _at, 4) != kind)
        {
            throw new FormatException($"no {kind} at byte {_at}");
        }

        var length = (int)BinaryPrimitives.ReadUInt32BigEndian(_file.AsSpan(_at + 4));
        _at += 8;
        return (_at, _at + length);
    }

    private int Word(int at) => BinaryPrimitives.ReadUInt16BigEndian(_file.AsSpan(at));

    private List<WalkedEvent> Track(int end)
    {
        var events = new List<WalkedEvent>();
        long tick = 0;
        byte running = 0;
        while (_at < end)
        {
            var from = _at;
            tick += Quantity();
            Deltas.Add(_file[from.._at]);
            var status = _file[_at] >= 0x80 ? _file[_at++] : running;
            running = status < 0xF0 ? status : (byte)0;
            events.Add(new WalkedEvent(tick, status, Data(status)));
        }

        if (_at != end || !events[^1].IsMeta(0x2F) || events.Count(e => e.IsMeta(0x2F)) != 1)
        {
            throw new FormatException("a track ends with its one end of track");
        }

        return events;
    }

    private byte[] Data(byte status)
    {
        if (status == 0xFF)
        {
            var type = _file[_at++];
            var length = Quantity();
            _at += length;
            return [type, .. _file.AsSpan(_at - length, length)];
        }

        var count = (status & 0xF0) switch
        {
            0x80 or 0x90 or 0xA0 or 0xB0 or 0xE0 => 2,
            0xC0 or 0xD0 => 1,
            _ => throw new FormatException($"status {status:X2} at byte {_at}"),
        };
        _at += count;
        return _file[(_at - count).._at];
    }

    private int Quantity()
    {
        var value = 0;
        for (var i = 0; i < 4; i++)
        {
            var b = _file[_at++];
            value = (value << 7) | (b & 0x7F);
            if (b < 0x80)
            {
                return value;
            }
        }

        throw new FormatException("a quantity of more than four bytes");
    }
}
