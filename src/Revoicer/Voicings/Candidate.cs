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
/// <param name="Bass">The lower or only pedal; null where the feet rest. All else lies above it.</param>
/// <param name="SecondPedal">The other pedal, higher; null where one foot rests.</param>
/// <param name="Upper">What the hands take, upward.</param>
public sealed record Voicing(WrittenNote? Bass, WrittenNote? SecondPedal, Items<Baton> Upper)
{
    /// <summary>How many bells it has.</summary>
    public int Bells => (Bass is null ? 0 : 1) + (SecondPedal is null ? 0 : 1) + Upper.Count;

    /// <summary>Its lowest bell; null in silence.</summary>
    public WrittenNote? Lowest => Bass ?? (Upper.Count > 0 ? Upper[0].Note : null);

    /// <summary>The tones it sounds.</summary>
    public PitchClassSet PitchClasses
    {
        get
        {
            var set = default(PitchClassSet);
            set = Bass is { } bass ? set.With(bass.PitchClass) : set;
            set = SecondPedal is { } second ? set.With(second.PitchClass) : set;
            foreach (var baton in Upper.AsSpan())
            {
                set = set.With(baton.Note.PitchClass);
            }

            return set;
        }
    }

    /// <summary>All bells, upward; feet first.</summary>
    public Items<WrittenNote> Notes
    {
        get
        {
            Span<WrittenNote> notes = stackalloc WrittenNote[Bells];
            return Items.Of<WrittenNote>(notes[..CopyNotes(notes)]);
        }
    }

    /// <summary>Copies all bells, upward, and tells how many there are.</summary>
    /// <param name="notes">Room for at least <see cref="Bells"/>.</param>
    public int CopyNotes(Span<WrittenNote> notes)
    {
        var count = 0;
        if (Bass is { } bass)
        {
            notes[count++] = bass;
        }

        if (SecondPedal is { } second)
        {
            notes[count++] = second;
        }

        foreach (var baton in Upper.AsSpan())
        {
            notes[count++] = baton.Note;
        }

        return count;
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
    public WrittenNote? Lowest => Voicing.Lowest;
}
