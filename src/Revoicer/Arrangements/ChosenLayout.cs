using Revoicer.Playing;

namespace Revoicer.Arrangements;

/// <summary>Where the tune of an arrangement lies, and what was weighed against it.</summary>
/// <param name="Tune">Where it lies.</param>
/// <param name="Price">The price of everything, what the tune costs with itself included, in thousandths of a clash unit.</param>
public sealed record ChosenLayout(TuneLayout Tune, long Price)
{
    /// <summary>The other layout, arranged likewise; null where it was not asked for or cannot be played.</summary>
    public OtherLayout? Other { get; init; }

    /// <summary>Why the other layout cannot be played, in a sentence; null where it can or was not asked for.</summary>
    public string? Obstacle { get; init; }
}
