using Revoicer.Music;

namespace Revoicer.Pictures;

/// <summary>A quarrel of a strip.</summary>
/// <param name="Words">Which partials, in words.</param>
/// <param name="Share">Its share of the chord's clash, 0..1.</param>
/// <param name="From">One of the partials.</param>
/// <param name="To">The other; null where one partial contradicts the chord.</param>
public sealed record StripLink(string Words, double Share, StripEnd From, StripEnd? To);

/// <summary>A partial that quarrels.</summary>
/// <param name="Bell">Its bell.</param>
/// <param name="Place">Where over the keyboard it lies, as MIDI numbers keys.</param>
public sealed record StripEnd(WrittenNote Bell, double Place);
