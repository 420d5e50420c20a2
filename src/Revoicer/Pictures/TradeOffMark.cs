using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>One draft in a picture of clash against carry.</summary>
/// <param name="Name">What is written beside it.</param>
/// <param name="Carry">How far its chords carry on the mean.</param>
/// <param name="Clash">Its clash dose in clash units, 0 or more.</param>
public sealed record TradeOffMark(string Name, Decibels Carry, double Clash);
