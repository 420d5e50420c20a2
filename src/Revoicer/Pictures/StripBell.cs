using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>A bell of a strip.</summary>
/// <param name="Note">Its key.</param>
/// <param name="Name">Its name, and what strikes it: "B3 right foot".</param>
/// <param name="IsStruck">Whether it is struck with the chord; else it rings on, or is the tune's.</param>
/// <param name="Partials">Where over the keyboard its partials lie, as MIDI numbers keys, lowest first.</param>
public sealed record StripBell(WrittenNote Note, string Name, bool IsStruck, Items<double> Partials);
