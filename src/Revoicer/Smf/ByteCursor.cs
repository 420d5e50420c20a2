namespace Revoicer.Smf;

/// <summary>A place in the bytes of a file, that never goes past an end.</summary>
/// <param name="file">The whole file.</param>
/// <param name="at">Where it begins.</param>
/// <param name="end">The byte behind the last that may be read; within the file.</param>
internal sealed class ByteCursor(byte[] file, int at, int end)
{
    /// <summary>The byte that comes next, counted from the start of the file.</summary>
    public int At { get; private set; } = at;

    /// <summary>How many bytes are left.</summary>
    public int Left => end - At;

    /// <summary>The next byte, which stays; null at the end.</summary>
    public byte? Peek => Left > 0 ? file[At] : null;

    /// <summary>The next byte; null at the end.</summary>
    public byte? Byte() => Left > 0 ? file[At++] : null;

    /// <summary>The bytes from a place up to here.</summary>
    public ReadOnlySpan<byte> Since(int from) => file.AsSpan(from, At - from);

    /// <summary>A variable-length quantity, 0 to 0x0FFFFFFF; null where the bytes end in it or a fifth would belong to it.</summary>
    public int? Quantity()
    {
        var value = 0;
        for (var i = 0; i < SmfNumbers.MostBytesOfQuantity; i++)
        {
            if (Byte() is not { } next)
            {
                return null;
            }

            value = (value << 7) | (next & 0x7F);
            if (next < 0x80)
            {
                return value;
            }
        }

        return null;
    }

    /// <summary>A whole number of four bytes, the highest first; null where fewer are left.</summary>
    public uint? Four() => Left >= 4 ? (uint)((Two()!.Value << 16) | Two()!.Value) : null;

    /// <summary>A whole number of two bytes, the higher first; null where fewer are left.</summary>
    public int? Two() => Left >= 2 ? (file[At++] << 8) | file[At++] : null;

    /// <summary>The next bytes, at most as many as are left.</summary>
    public ReadOnlySpan<byte> Take(int count)
    {
        var taken = file.AsSpan(At, Math.Min(count, Left));
        At += taken.Length;
        return taken;
    }
}
