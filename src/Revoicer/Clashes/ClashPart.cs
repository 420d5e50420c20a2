using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>Something that makes a part of the clash of some strokes under a chord.</summary>
/// <param name="Share">Its share of the whole clash in the window, above 0 and at most 1.</param>
/// <param name="Lasts">
/// How long it is to be heard: from the stroke (the later of two) or the window's start on, whichever comes last, until the
/// partial, or the first of both, falls below -20 dB of that stroke's strongest partial; physical decay without fade, not cut
/// at the window's end; 0 where one never is above it, or no longer. Of several strokes of the bells the longest.
/// </param>
public abstract record ClashPart(double Share, Seconds Lasts);

/// <summary>Two partials of different bells that beat against each other: roughness.</summary>
/// <param name="LowerBell">The bell of the lower partial.</param>
/// <param name="Lower">The lower partial.</param>
/// <param name="UpperBell">The bell of the higher partial.</param>
/// <param name="Upper">The higher partial.</param>
/// <param name="Share">Their share of the whole clash.</param>
/// <param name="Lasts">How long both are to be heard.</param>
public sealed record RoughPartials(Bell LowerBell, Partial Lower, Bell UpperBell, Partial Upper, double Share, Seconds Lasts)
    : ClashPart(Share, Lasts);

/// <summary>A partial that sounds a semitone from a tone of the chord without being one: contradiction.</summary>
/// <param name="Bell">Its bell.</param>
/// <param name="Partial">The partial.</param>
/// <param name="Sounds">Its pitch class as heard, counted from its bell.</param>
/// <param name="Beside">The tone of the chord, as heard, that it stands beside: the third before any other.</param>
/// <param name="Share">Its share of the whole clash.</param>
/// <param name="Lasts">How long it is to be heard.</param>
public sealed record ContraryPartial(Bell Bell, Partial Partial, PitchClass Sounds, PitchClass Beside, double Share, Seconds Lasts)
    : ClashPart(Share, Lasts);
