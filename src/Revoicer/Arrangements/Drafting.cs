using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>What comes of drafting a sheet.</summary>
public abstract record Drafting
{
    private Drafting()
    {
    }

    /// <summary>In a few words why there is no draft, to follow the sheet's name: "cannot be played here"; empty where there is one.</summary>
    public abstract string InShort { get; }

    /// <summary>An arrangement that the checker found playable.</summary>
    /// <param name="Arrangement">The arrangement.</param>
    public sealed record Made(Arrangement Arrangement) : Drafting
    {
        /// <inheritdoc/>
        public override string InShort => "";

        /// <summary>What the whole costs, term by term: every pair of chords once, what the tune costs with itself left out.</summary>
        public Items<PricedTerm> Terms { get; init; } = [];

        /// <summary>How far that chord carries which carries least of those of 0.8 s and more that sound; null where there is none.</summary>
        public Decibels? WeakestCarry { get; init; }

        /// <summary>The same sheet taken by a plain hand; null where it was not asked for, or the tower lacks a bell for it.</summary>
        public Arrangement? PlainHand { get; init; }
    }

    /// <summary>The sheet can be read but not played here.</summary>
    /// <param name="Reasons">What stands in the way and what would help, in sentences.</param>
    public sealed record Unplayable(Items<string> Reasons) : Drafting
    {
        /// <inheritdoc/>
        public override string InShort => "cannot be played here";
    }

    /// <summary>The sheet asks for no chord, so there is nothing to voice.</summary>
    /// <param name="Reason">That, and what would help, in a sentence.</param>
    public sealed record NoChords(string Reason) : Drafting
    {
        /// <inheritdoc/>
        public override string InShort => "has no chord symbols";
    }

    /// <summary>Rules of the sound, or other things asked for, that no voicing keeps together, while all of it could be played.</summary>
    /// <param name="Reasons">Where, which rules, and what would help, in sentences.</param>
    public sealed record Ruled(Items<string> Reasons) : Drafting
    {
        /// <inheritdoc/>
        public override string InShort => "cannot keep all rules";
    }

    /// <summary>The deadline came before any voicing of the whole was found.</summary>
    /// <param name="Sentence">That it did, and what would help.</param>
    public sealed record OutOfTime(string Sentence) : Drafting
    {
        /// <inheritdoc/>
        public override string InShort => "the time limit came first";
    }

    /// <summary>Wishes that cannot be met here.</summary>
    /// <param name="Problems">Each at its place, with what stands against it and what would help; at least one.</param>
    public sealed record Unmet(Items<Problem> Problems) : Drafting
    {
        /// <inheritdoc/>
        public override string InShort => "cannot meet all wishes";
    }

    /// <summary>Wishes that speak of places where the sheet has no chord.</summary>
    /// <param name="Problems">Each at its place, with the places that there are; at least one.</param>
    public sealed record Astray(Items<Problem> Problems) : Drafting
    {
        /// <inheritdoc/>
        public override string InShort => "lacks a chord that a wish speaks of";
    }

    /// <summary>Why there is no draft, in sentences; none where there is one.</summary>
    public Items<string> Why => this switch
    {
        Unplayable unplayable => unplayable.Reasons,
        NoChords none => [none.Reason],
        Ruled ruled => ruled.Reasons,
        OutOfTime late => [late.Sentence],
        Unmet unmet => unmet.Problems.Select(p => p.Found).ToItems(),
        Astray astray => astray.Problems.Select(p => p.Found).ToItems(),
        _ => [],
    };
}
