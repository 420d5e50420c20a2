using Revoicer.Bells;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>Whether a bell counts as ringing on.</summary>
internal static class StillRinging
{
    // -20 dB: below a tenth of its amplitude at the stroke a bell counts as no longer ringing on.
    private static readonly Decibels StillHeard = new(-20);

    /// <summary>Whether it does so long after its stroke.</summary>
    public static bool Is(Bell bell, Seconds since)
    {
        var strongest = bell.Partials.Max(p => p.Amplitude);
        return bell.Partials.Any(p => p.Amplitude * Math.Exp(-p.Kappa * since.Value) > strongest * StillHeard.AmplitudeFactor);
    }

    /// <summary>No bell of a tower rings on for longer; in whole seconds.</summary>
    public static Seconds Longest(Tower tower)
    {
        const int longest = 600;
        var seconds = 1;
        while (seconds < longest && tower.Bells.Any(bell => Is(bell, new Seconds(seconds))))
        {
            seconds++;
        }

        return new Seconds(seconds);
    }
}
