using System.Buffers.Binary;

namespace Revoicer.LeadSheets.Midi;

/// <summary>
/// A file that has been checked byte by byte, written anew with only what is read of it: a head of six bytes, then the tracks
/// with their notes, names, speeds, metres, keys and ends, every event with its status byte.
/// </summary>
/// <param name="format">0 or 1, as the file has it.</param>
/// <param name="division">Ticks of a quarter, 1..32767.</param>
internal sealed class PlainFile(int format, int division)
{
    // Standard MIDI Files 1.0: four groups of seven bits.
    private const int LargestQuantity = 0x0FFF_FFFF;

    private static readonly byte[] EmptyText = [0xFF, 0x01, 0x00];
    private static readonly byte[] EndOfTrack = [0xFF, 0x2F, 0x00];

    private readonly MemoryStream _tracks = new();
    private readonly MemoryStream _track = new();
    private int _count;
    private int _silent;

    /// <summary>Whether the file has one track for all voices.</summary>
    public bool IsOneTrack => format == 0;

    /// <summary>Ticks of a quarter.</summary>
    public int Division => division;

    /// <summary>How many notes begin in the tracks written so far.</summary>
    public int Notes { get; private set; }

    /// <summary>The whole file, format 1.</summary>
    public byte[] Bytes()
    {
        var file = new byte[14 + _tracks.Length];
        "MThd"u8.CopyTo(file);
        BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(4), 6);
        BinaryPrimitives.WriteInt16BigEndian(file.AsSpan(8), 1);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(10), (ushort)_count);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(12), (ushort)division);
        _tracks.GetBuffer().AsSpan(0, (int)_tracks.Length).CopyTo(file.AsSpan(14));
        return file;
    }

    /// <summary>Time goes by; what happens there is not written.</summary>
    /// <param name="delta">Ticks since the event before, 0 to 0x0FFFFFFF.</param>
    public void Pass(int delta)
    {
        // Two times that do not fit into one quantity are parted by an event that says nothing.
        if (_silent > LargestQuantity - delta)
        {
            Write(EmptyText);
        }

        _silent += delta;
    }

    /// <summary>Writes the beginning or end of a note.</summary>
    /// <param name="delta">Ticks since the event before.</param>
    /// <param name="status">Its status, 0x80 to 0x9F.</param>
    /// <param name="data">Pitch and velocity.</param>
    public void KeepNote(int delta, byte status, ReadOnlySpan<byte> data)
    {
        Keep(delta, [status], data);
        Notes += status >= 0x90 && data[1] > 0 ? 1 : 0;
    }

    /// <summary>Writes a meta event.</summary>
    /// <param name="delta">Ticks since the event before.</param>
    /// <param name="type">What it is.</param>
    /// <param name="data">What it says.</param>
    public void KeepMeta(int delta, byte type, ReadOnlySpan<byte> data) =>
        Keep(delta, [0xFF, type, .. Quantity(data.Length)], data);

    /// <summary>Ends a track after a time.</summary>
    public void CloseTrack(int delta)
    {
        Keep(delta, EndOfTrack, []);
        Span<byte> head = stackalloc byte[8];
        "MTrk"u8.CopyTo(head);
        BinaryPrimitives.WriteInt32BigEndian(head[4..], (int)_track.Length);
        _tracks.Write(head);
        _track.WriteTo(_tracks);
        _track.SetLength(0);
        _count++;
    }

    /// <summary>A number as a variable-length quantity.</summary>
    /// <param name="value">0 to 0x0FFFFFFF.</param>
    internal static byte[] Quantity(int value)
    {
        var bytes = new Stack<byte>([(byte)(value & 0x7F)]);
        while ((value >>= 7) > 0)
        {
            bytes.Push((byte)(0x80 | (value & 0x7F)));
        }

        return [.. bytes];
    }

    // Its head is the status, and of a meta event its type and its length.
    private void Keep(int delta, ReadOnlySpan<byte> head, ReadOnlySpan<byte> data)
    {
        Pass(delta);
        Write(head);
        _track.Write(data);
    }

    private void Write(ReadOnlySpan<byte> head)
    {
        _track.Write(Quantity(_silent));
        _track.Write(head);
        _silent = 0;
    }
}
