using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>A stretch of a written bar in which notes sound that make no chord.</summary>
/// <param name="WrittenBar">Index of the bar among the written ones.</param>
/// <param name="Number">The bar's number as a player counts.</param>
/// <param name="Start">Where it begins, from the bar's start.</param>
/// <param name="Length">How long it lasts within the bar; positive.</param>
public sealed record UnclearStretch(int WrittenBar, int Number, Beats Start, Beats Length);

/// <summary>The chords of a passage.</summary>
/// <param name="Sheet">
/// The passage's bars, without notes, with a chord symbol over every stretch that has a chord. Symbols that the file itself
/// has stand as they are.
/// </param>
/// <param name="Unclear">
/// The stretches for which no chord was found that fits, in order; there the sheet has none. Silence before the first note is
/// none of them.
/// </param>
/// <param name="Found">How many written stretches got their chord from the notes.</param>
public sealed record FoundHarmony(LeadSheet Sheet, Items<UnclearStretch> Unclear, int Found);
