using System.Buffers.Binary;

namespace Revoicer.Smf;

/// <summary>A file in which every chunk and every event lies where the lengths say.</summary>
/// <param name="Bytes">The whole file.</param>
/// <param name="Format">0 or 1.</param>
/// <param name="Division">Ticks of a quarter, 1..32767.</param>
/// <param name="Tracks">Where the events of each track lie, from the first time to the end mark; at least one.</param>
/// <param name="End">The byte behind the chunk of the last track.</param>
/// <param name="Unread">The meta and system exclusive events that the library would misread, from their status on, in order.</param>
internal sealed record CheckedFile(
    byte[] Bytes,
    int Format,
    int Division,
    IReadOnlyList<ByteRange> Tracks,
    int End,
    IReadOnlyList<ByteRange> Unread)
{
    private const int FileHead = 14;
    private const int ChunkHead = 8;

    private static ReadOnlySpan<byte> EmptyText => [0xFF, 0x01, 0x00];

    /// <summary>
    /// Whether the library reads the file rightly as it is: a head of six bytes, then tracks alone, each with nothing behind its
    /// end mark, and no event that it would misread.
    /// </summary>
    public bool IsSound => Unread.Count == 0 && End == FileHead + Tracks.Sum(t => ChunkHead + t.Length);

    /// <summary>The bytes for the library: the file itself where it is sound, else a repaired copy.</summary>
    public byte[] Sound() => IsSound ? Bytes : Repaired();

    // Only what stands in the way is left out; an event becomes an empty text, so that the times around it stay.
    private byte[] Repaired()
    {
        using var copy = new MemoryStream(Bytes.Length);
        Span<byte> head = [.. "MThd"u8, 0, 0, 0, 6, 0, (byte)Format, 0, 0, 0, 0];
        BinaryPrimitives.WriteUInt16BigEndian(head[10..], (ushort)Tracks.Count);
        BinaryPrimitives.WriteUInt16BigEndian(head[12..], (ushort)Division);
        copy.Write(head);
        var unread = new Queue<ByteRange>(Unread);
        foreach (var track in Tracks)
        {
            Write(track, unread, copy);
        }

        return copy.ToArray();
    }

    private void Write(ByteRange track, Queue<ByteRange> unread, MemoryStream copy)
    {
        var start = copy.Position;
        copy.Write("MTrk\0\0\0\0"u8);
        var from = track.From;
        while (unread.TryPeek(out var left) && left.From < track.To)
        {
            copy.Write(Bytes.AsSpan(from, left.From - from));
            copy.Write(EmptyText);
            from = unread.Dequeue().To;
        }

        copy.Write(Bytes.AsSpan(from, track.To - from));
        BinaryPrimitives.WriteInt32BigEndian(copy.GetBuffer().AsSpan((int)start + 4), (int)(copy.Position - start) - ChunkHead);
    }
}
