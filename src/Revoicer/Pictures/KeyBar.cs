namespace Revoicer.Pictures;

/// <summary>One key of a chart.</summary>
/// <param name="Tonic">The keynote that the player reads; null where the sheet names no key.</param>
/// <param name="Signed">The semitones from the written key: "+3".</param>
/// <param name="Price">What the draft costs in clash units, the tune with itself included; null where it cannot be played.</param>
/// <param name="Clash">Its clash dose, the tune with itself left out; null where it cannot be played.</param>
/// <param name="HasAllBasses">Whether every chord has a pedal for its bass.</param>
/// <param name="IsRecommended">Whether it is the key recommended.</param>
public sealed record KeyBar(string? Tonic, string Signed, double? Price, double? Clash, bool HasAllBasses, bool IsRecommended);
