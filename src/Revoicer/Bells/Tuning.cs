using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>Equal temperament at a pitch.</summary>
/// <param name="A4">The frequency of strike note A4.</param>
public readonly record struct Tuning(Hertz A4)
{
    /// <summary>A4 = 440 Hz (ISO 16).</summary>
    public static Tuning Concert { get; } = new(new Hertz(440));

    /// <summary>The frequency of a strike note.</summary>
    public Hertz Of(StrikeNote note) => new(A4.Value * Math.Pow(2, (note.Midi - 69) / 12.0));

    /// <summary>The pitch a number of cents higher (lower if negative).</summary>
    internal Tuning Raised(double cents) => new(new Hertz(A4.Value * Math.Pow(2, cents / 1200)));
}
