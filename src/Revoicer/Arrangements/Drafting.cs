using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>What comes of drafting a sheet.</summary>
public abstract record Drafting
{
    private Drafting()
    {
    }

    /// <summary>An arrangement that the checker found playable.</summary>
    /// <param name="Arrangement">The arrangement.</param>
    public sealed record Made(Arrangement Arrangement) : Drafting
    {
        /// <summary>What the whole costs, term by term: every pair of chords once, what the tune costs with itself left out.</summary>
        public Items<PricedTerm> Terms { get; init; } = [];

        /// <summary>How far that chord carries which carries least of those of 0.8 s and more that sound; null where there is none.</summary>
        public Decibels? WeakestCarry { get; init; }

        /// <summary>The same sheet taken by a plain hand; null where it was not asked for, or the tower lacks a bell for it.</summary>
        public Arrangement? PlainHand { get; init; }
    }

    /// <summary>The sheet can be read but not played here.</summary>
    /// <param name="Reasons">What stands in the way and what would help, in sentences.</param>
    public sealed record Unplayable(Items<string> Reasons) : Drafting;

    /// <summary>Wishes that cannot be met here.</summary>
    /// <param name="Problems">Each at its place, with what stands against it and what would help; at least one.</param>
    public sealed record Unmet(Items<Problem> Problems) : Drafting;

    /// <summary>Wishes that speak of places where the sheet has no chord.</summary>
    /// <param name="Problems">Each at its place, with the places that there are; at least one.</param>
    public sealed record Astray(Items<Problem> Problems) : Drafting;
}
