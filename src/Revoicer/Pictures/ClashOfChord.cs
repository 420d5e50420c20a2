namespace Revoicer.Pictures;

/// <summary>The clash of one chord and where it stands.</summary>
/// <param name="From">Where it begins, in bars as heard: 2.5 is half-way through the third.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Clash">Its clash figure, the tune with itself left out; 0 or more.</param>
public sealed record ClashOfChord(double From, double To, double Clash);
