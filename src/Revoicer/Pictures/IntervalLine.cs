using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>How the clash of one interval changes over the compass.</summary>
/// <param name="Name">The interval's name: "major third".</param>
/// <param name="Interval">How far the higher bell lies above the lower.</param>
/// <param name="Points">One point for every lower bell whose partner the tower has, lowest first.</param>
public sealed record IntervalLine(string Name, Interval Interval, Items<IntervalPoint> Points);
