using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>The A-weighting of IEC 61672-1: how much a tone counts for loudness, 0 dB at 1 kHz.</summary>
internal static class AWeighting
{
    // The four pole frequencies in Hz, and what makes the curve 0 dB at 1 kHz, as IEC 61672-1 gives them (from memory).
    private const double F1 = 20.60;
    private const double F2 = 107.7;
    private const double F3 = 737.9;
    private const double F4 = 12194;
    private const double AtOneKilohertz = -2.000;

    /// <summary>The weighting of a frequency.</summary>
    public static Decibels Of(Hertz frequency)
    {
        var square = frequency.Value * frequency.Value;
        var response = F4 * F4 * square * square
            / ((square + (F1 * F1)) * Math.Sqrt((square + (F2 * F2)) * (square + (F3 * F3))) * (square + (F4 * F4)));
        return new Decibels((20 * Math.Log10(response)) - AtOneKilohertz);
    }
}
