using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>One stroke of a candidate, timed from the start of its slot.</summary>
/// <param name="Note">The baton or pedal.</param>
/// <param name="Limb">What strikes it.</param>
/// <param name="After">How long after the start of the slot it belongs.</param>
/// <param name="LeadSteps">By how many steps of a roll it comes before that.</param>
public readonly record struct SlotStroke(WrittenNote Note, Limb Limb, Beats After, int LeadSteps)
{
    /// <summary>Whether a foot plays it.</summary>
    public bool IsPedal => Limb is Limb.LeftFoot or Limb.RightFoot;
}

/// <summary>The bells of a chord and the limbs that take them.</summary>
/// <param name="Bass">The lower or only pedal; null where the feet rest.</param>
/// <param name="SecondPedal">The other pedal, higher; null where one foot rests.</param>
/// <param name="Upper">What the hands take, upward.</param>
public sealed record Voicing(WrittenNote? Bass, WrittenNote? SecondPedal, Items<Baton> Upper)
{
    /// <summary>All bells, upward; feet first.</summary>
    public IEnumerable<WrittenNote> Notes
    {
        get
        {
            if (Bass is { } bass)
            {
                yield return bass;
            }

            if (SecondPedal is { } second)
            {
                yield return second;
            }

            foreach (var baton in Upper)
            {
                yield return baton.Note;
            }
        }
    }
}

/// <summary>A baton and the hand that takes it.</summary>
/// <param name="Note">The baton.</param>
/// <param name="Limb">Left or right hand.</param>
public readonly record struct Baton(WrittenNote Note, Limb Limb);

/// <summary>One way to play a slot: bells, limbs, times.</summary>
/// <param name="Figure">When the strokes fall.</param>
/// <param name="Voicing">The bells and limbs.</param>
/// <param name="Strokes">The strokes in order of time, then upward.</param>
public sealed record Candidate(Figure Figure, Voicing Voicing, Items<SlotStroke> Strokes)
{
    /// <summary>The lowest bell struck; null in silence.</summary>
    public WrittenNote? Lowest { get; } = Voicing.Notes.Select(n => (WrittenNote?)n).Min();
}
