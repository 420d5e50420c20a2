namespace Revoicer.Smf;

/// <summary>Numbers of Standard MIDI Files 1.0 (MIDI Manufacturers Association, 1996).</summary>
internal static class SmfNumbers
{
    /// <summary>A variable-length quantity has at most so many bytes, of seven bits each.</summary>
    public const int MostBytesOfQuantity = 4;

    /// <summary>The largest variable-length quantity, and so the most ticks between two events.</summary>
    public const int LargestQuantity = 0x0FFF_FFFF;

    /// <summary>The most ticks of a quarter: 15 bits.</summary>
    public const int LargestDivision = 0x7FFF;

    /// <summary>The longest quarter, in microseconds: three bytes.</summary>
    public const int LongestQuarter = 0xFF_FFFF;

    /// <summary>Microseconds of a quarter where no tempo is given: 120 quarters a minute.</summary>
    public const int AssumedQuarter = 500_000;

    /// <summary>Microseconds in a minute.</summary>
    public const double Minute = 60_000_000;

    /// <summary>The most note values in a bar: one byte.</summary>
    public const int LargestNumerator = 255;

    /// <summary>MIDI clocks in a quarter.</summary>
    public const int ClocksInQuarter = 24;
}
