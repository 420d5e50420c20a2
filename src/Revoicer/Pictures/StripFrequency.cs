using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>A mark of a strip's scale.</summary>
/// <param name="Frequency">The frequency.</param>
/// <param name="Place">Where over the keyboard it lies, as MIDI numbers keys.</param>
public sealed record StripFrequency(Hertz Frequency, double Place);
