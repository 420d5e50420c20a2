using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>The spectrum of one bell at the stroke.</summary>
/// <param name="StrikeNote">The pitch by which the bell is named.</param>
/// <param name="Sticks">Its partials, lowest first.</param>
public sealed record BellSpectrum(StrikeNote StrikeNote, Items<PartialStick> Sticks);
