using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>What two bells of an interval clash, at one place of the compass.</summary>
/// <param name="Lower">The strike note of the lower bell.</param>
/// <param name="Frequency">The strike frequency of the lower bell.</param>
/// <param name="Clash">The clash of both struck together, in clash units (C4 E4 G4 = 100), 0 or more.</param>
public sealed record IntervalPoint(StrikeNote Lower, Hertz Frequency, double Clash);
