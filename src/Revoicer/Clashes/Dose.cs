using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>The closed form of what two dying partials have sounded together over a stretch of time.</summary>
internal static class Dose
{
    /// <summary>
    /// The integral of exp(-kappa_i t) exp(-kappa_j (t - delay)) over a window, from both being struck. Written so
    /// that no exponent is positive: a late stroke after a quick decay must not overflow.
    /// </summary>
    /// <param name="kappaI">Decay of the earlier partial, fade included, in 1/s.</param>
    /// <param name="kappaJ">Decay of the later partial, fade included, in 1/s.</param>
    /// <param name="delay">How long after the earlier the later is struck, not negative.</param>
    /// <param name="from">Start of the window, counted from the earlier stroke.</param>
    /// <param name="to">End of the window; may be <see cref="Seconds.Forever"/>.</param>
    /// <returns>Seconds, for amplitudes of 1 at the stroke.</returns>
    public static double Integral(double kappaI, double kappaJ, Seconds delay, Seconds from, Seconds to)
    {
        var start = Math.Max(delay.Value, from.Value);
        if (start >= to.Value)
        {
            return 0;
        }

        var rate = kappaI + kappaJ;
        return Math.Exp((-kappaI * start) - (kappaJ * (start - delay.Value)))
            * -Expm1(-rate * (to.Value - start)) / rate;
    }

    // exp(x) - 1 without loss of digits for small x, as in a window of a few milliseconds.
    private static double Expm1(double x) =>
        Math.Abs(x) < 1e-5 ? x + (x * x / 2) : Math.Exp(x) - 1;
}
