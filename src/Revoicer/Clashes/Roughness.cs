using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// Roughness between two partials after Hutchinson and Knopoff (1978), with the curve as Bigand, Parncutt and Lerdahl
/// (1996) write it; docs/references.md has both in full.
/// </summary>
internal static class Roughness
{
    /// <summary>The distance, in critical bandwidths, beyond which two partials are not rough (Bigand et al. 1996).</summary>
    public const double CutOff = 1.2;

    /// <summary>The distance, in critical bandwidths, at which two partials are roughest (Bigand et al. 1996).</summary>
    private const double Peak = 0.25;

    /// <summary>The critical bandwidth around the mean of two frequencies, in Hz (Hutchinson and Knopoff 1978).</summary>
    public static Hertz Bandwidth(Hertz first, Hertz second) =>
        new(1.72 * Math.Pow((first.Value + second.Value) / 2, 0.65));

    /// <summary>The curve without its cut-off: 0 at distance 0, 1 at a quarter of a bandwidth, falling after.</summary>
    /// <param name="distance">y, in critical bandwidths, not negative.</param>
    public static double CurveWithoutCutOff(double distance)
    {
        var part = distance / Peak * Math.Exp(1 - (distance / Peak));
        return part * part;
    }

    /// <summary>g(y): the curve, and 0 beyond the cut-off.</summary>
    /// <param name="distance">y, in critical bandwidths, not negative.</param>
    public static double Curve(double distance) => distance > CutOff ? 0 : CurveWithoutCutOff(distance);

    /// <summary>g of two frequencies, 0..1.</summary>
    public static double Between(Hertz first, Hertz second) =>
        Curve(Math.Abs(first.Value - second.Value) / Bandwidth(first, second).Value);

    /// <summary>
    /// Roughness of a steady sound: the sum of a_i a_j g_ij over all pairs by the sum of a_i^2. The program prices doses;
    /// this is the form in which values are published.
    /// </summary>
    /// <param name="spectrum">Frequencies and linear amplitudes; coincident ones should be merged first.</param>
    public static double Static(IReadOnlyList<(Hertz Frequency, double Amplitude)> spectrum)
    {
        var sum = 0.0;
        for (var i = 0; i < spectrum.Count; i++)
        {
            for (var j = i + 1; j < spectrum.Count; j++)
            {
                sum += spectrum[i].Amplitude * spectrum[j].Amplitude
                    * Between(spectrum[i].Frequency, spectrum[j].Frequency);
            }
        }

        return sum / spectrum.Sum(p => p.Amplitude * p.Amplitude);
    }
}
