using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>A partial as a stick in a picture of spectra.</summary>
/// <param name="Partial">The founder's name: "tierce".</param>
/// <param name="Frequency">Its frequency.</param>
/// <param name="Level">Its level at the stroke, re the loudest partial in the picture: 0 dB or less.</param>
/// <param name="Decay">Its T60: the time in which it falls by 60 dB; positive.</param>
public sealed record PartialStick(string Partial, Hertz Frequency, Decibels Level, Seconds Decay)
{
    /// <summary>Its level a time after the stroke, re the same: a partial falls by 60 dB in every T60.</summary>
    public Decibels LevelAfter(Seconds time) => new(Level.Value - (60 * time.Value / Decay.Value));
}
