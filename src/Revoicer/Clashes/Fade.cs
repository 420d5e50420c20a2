using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// How quickly what rings leaves the listener's attention: amplitudes are priced as if they fell by 1/e within this
/// time in addition to their physical decay. The default value of the type is <see cref="None"/>.
/// </summary>
public readonly record struct Fade
{
    private Fade(double rate) => Rate = rate;

    /// <summary>Added to kappa of every partial, in 1/s; 0 is the physics alone.</summary>
    public double Rate { get; }

    /// <summary>No fade: the physics.</summary>
    public static Fade None => default;

    /// <summary>1.16 s, an estimate.</summary>
    public static Fade Default { get; } = Of(new Seconds(1.16));

    /// <summary>A fade by 1/e within a time.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is not positive.</exception>
    public static Fade Of(Seconds time) => time.Value > 0
        ? new Fade(1 / time.Value)
        : throw new ArgumentOutOfRangeException(nameof(time), time.Value, "a fade takes a positive time (s)");
}
