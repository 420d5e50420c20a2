using Revoicer.Bells;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>Two partials of different bells that beat against each other.</summary>
/// <param name="LowerBell">The bell of the lower partial.</param>
/// <param name="Lower">The lower partial.</param>
/// <param name="UpperBell">The bell of the higher partial.</param>
/// <param name="Upper">The higher partial.</param>
/// <param name="Share">Their share of all roughness between the strokes in the window, above 0 and at most 1.</param>
/// <param name="Lasts">
/// How long, from the later of the two strokes or the window's start on, whichever comes last, both stay above -20 dB of
/// the later bell's strongest partial at its stroke; physical decay without fade, not cut at the window's end, 0 where one
/// of them never is, or no longer. Of several strokes of the two bells the longest.
/// </param>
public sealed record RoughPartials(
    Bell LowerBell,
    Partial Lower,
    Bell UpperBell,
    Partial Upper,
    double Share,
    Seconds Lasts);
