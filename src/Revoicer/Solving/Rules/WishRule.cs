using Revoicer.LeadSheets.Wishes;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>A player's wish. It is kept or the search says what stands against it; unlike the program's own rules it is never lifted.</summary>
/// <param name="wish">The wish.</param>
public sealed class WishRule(Wish wish) : SlotRule
{
    /// <summary>The wish.</summary>
    public Wish Wish => wish;

    /// <inheritdoc/>
    public override string Words => $"your wish for {wish.Words}";

    /// <inheritdoc/>
    public override bool Concerns(Slot slot) => wish.At.Holds(slot.Bar, slot.BeatNumber);

    /// <inheritdoc/>
    public override bool Allows(Slot slot, Candidate candidate) => Has(slot, candidate) != wish.IsBan;

    private bool Has(Slot slot, Candidate candidate) => wish.Thing switch
    {
        WishedThing.BassBell bass => candidate.Voicing.Bass == bass.Note,
        WishedThing.LeftHandTop top => candidate.Voicing.LeftHandTop == top.Note,
        WishedThing.OneBell bell => candidate.Notes.Contains(bell.Note),
        WishedThing.WholeVoicing whole => candidate.Notes == whole.Notes,
        WishedThing.LowestTone lowest => candidate.Lowest is { } note
            && slot.Symbol.Tones.Any(t => t.Degree.Number == lowest.Degree && t.PitchClass == note.PitchClass),
        WishedThing.FigureNamed figure => FigureNames.Of(candidate.Figure) == figure.Name,
        var other => throw new InvalidOperationException($"no such thing to wish for: {other}"),
    };
}
