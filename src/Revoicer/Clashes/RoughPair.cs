namespace Revoicer.Clashes;

/// <summary>Two partials of two bells that are rough together.</summary>
/// <param name="Lower">Which partial of the bell with the lower place in the tower.</param>
/// <param name="Higher">Which partial of the other bell.</param>
/// <param name="Strength">g times both amplitudes.</param>
/// <param name="Rate">How fast the two die away together: the sum of their kappas, fade included, in 1/s.</param>
internal readonly record struct RoughPair(int Lower, int Higher, double Strength, double Rate);
