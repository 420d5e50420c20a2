using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>Who listens, and from where; what carrying and brightness depend on beside the bells.</summary>
/// <param name="Distance">From the bells, 1 m or more. Spreading takes the same from every bell, so only the air's share tells.</param>
/// <param name="Air">The air in between.</param>
/// <param name="RadiatedPerOctave">How the radiated level changes with every octave above strike C4.</param>
public sealed record Listener(Metres Distance, Air Air, Decibels RadiatedPerOctave)
{
    /// <summary>100 m, a mild day, -4 dB an octave: the last an estimate that decides much.</summary>
    public static Listener Default { get; } = new(new Metres(100), Air.Mild, new Decibels(-4));
}
