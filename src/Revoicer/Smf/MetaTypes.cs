namespace Revoicer.Smf;

/// <summary>The meta events that matter here, by their numbers in Standard MIDI Files 1.0.</summary>
internal static class MetaTypes
{
    /// <summary>The end of a track.</summary>
    public const byte EndOfTrack = 0x2F;

    private const byte Number = 0x00;
    private const byte Speed = 0x51;
    private const byte Offset = 0x54;
    private const byte Metre = 0x58;
    private const byte Key = 0x59;

    // The lower number of a metre stands as a power of two; 64 is the finest that an arrangement file holds (docs/files.md).
    private const int FinestPower = 6;
    private const int MostAccidentals = 7;

    /// <summary>Why a tempo, metre or key cannot be read, as a clause; null where it can, or where the event is none of these.</summary>
    public static string? Problem(byte type, ReadOnlySpan<byte> data) => type switch
    {
        Speed when data is not [_, _, _] || data.IndexOfAnyExcept((byte)0) < 0 => "a tempo cannot be read",
        Metre when data is not [> 0, <= FinestPower, _, _] => "a time signature cannot be read",
        Key when data is not [_, 0 or 1] || Math.Abs((int)(sbyte)data[0]) > MostAccidentals => "a key signature cannot be read",
        _ => null,
    };

    /// <summary>Whether an event is as long as the standard says, where it says so of one that is passed over.</summary>
    public static bool HasItsLength(byte type, int length) => type switch
    {
        Number => length == 2,
        Offset => length == 5,
        EndOfTrack => length == 0,
        _ => true,
    };
}
