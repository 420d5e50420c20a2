using Revoicer.Music;

namespace Revoicer.Pictures;

/// <summary>A key of a strip.</summary>
/// <param name="Note">The key.</param>
/// <param name="HasBell">Whether the tower has a bell on it.</param>
/// <param name="IsStruck">Whether the chord strikes it.</param>
public sealed record StripKey(WrittenNote Note, bool HasBell, bool IsStruck);
