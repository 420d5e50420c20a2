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
/// <param name="Bass">
/// The lower or only pedal; null where the feet rest. All else lies above it, but where the bass moves in tenths this is its
/// first pedal and the chord's bass, and what follows may lie lower.
/// </param>
/// <param name="SecondPedal">The other pedal, higher; null where one foot rests.</param>
/// <param name="Upper">What the hands take, upward.</param>
public sealed record Voicing(WrittenNote? Bass, WrittenNote? SecondPedal, Items<Baton> Upper)
{
    /// <summary>Tones of the chord to which the bass moves in tenths, or that come later in music as it was, in order of time; each once, none that is struck with the chord.</summary>
    public Items<WrittenNote> MovingBass { get; init; } = [];

    /// <summary>How many bells it has.</summary>
    public int Bells => InGrip + MovingBass.Count;

    /// <summary>How many of them hands and feet hold together.</summary>
    public int InGrip => (Bass is null ? 0 : 1) + (SecondPedal is null ? 0 : 1) + Upper.Count;

    /// <summary>Its lowest bell; null in silence.</summary>
    public WrittenNote? Lowest => Bass ?? (Upper.Count > 0 ? Upper[0].Note : null);

    /// <summary>The highest baton of the left hand; null where it rests.</summary>
    public WrittenNote? LeftHandTop => Upper.Where(b => b.Limb == Limb.LeftHand).Select(b => (WrittenNote?)b.Note).Max();

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

            foreach (var later in MovingBass.AsSpan())
            {
                set = set.With(later.PitchClass);
            }

            return set;
        }
    }

    /// <summary>All bells, upward.</summary>
    public Items<WrittenNote> Notes
    {
        get
        {
            Span<WrittenNote> notes = stackalloc WrittenNote[InGrip];
            CopyGrip(notes);
            return MovingBass.Count == 0 ? Items.Of<WrittenNote>(notes) : MovingBass.Concat(notes.ToArray()).Order().ToItems();
        }
    }

    /// <summary>Copies the bells that are held together, upward, and tells how many there are.</summary>
    /// <param name="notes">Room for at least <see cref="InGrip"/>.</param>
    public int CopyGrip(Span<WrittenNote> notes)
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
    /// <summary>The pedal on its last beat that leads by step into the next bass; null where there is none. It is no tone of the voicing.</summary>
    public WrittenNote? Approach { get; init; }

    /// <summary>The lowest bell of its chord; null in silence. Where the bass moves in tenths it is the first of the bass.</summary>
    public WrittenNote? Lowest => Voicing.Lowest;

    /// <summary>The bass with which it ends: where it moves, the last of it; null where the feet rest.</summary>
    public WrittenNote? LastBass => Approach is not null ? Approach : Figure is Figure.InTenths or Figure.AsItWas
        ? Strokes.Where(s => s.IsPedal).Select(s => (WrittenNote?)s.Note).LastOrDefault()
        : Voicing.Bass;

    /// <summary>All bells struck, upward.</summary>
    public Items<WrittenNote> Notes => Strokes.Select(s => s.Note).Distinct().Order().ToItems();

    /// <summary>The same without a tone that leads on.</summary>
    public Items<WrittenNote> ChordNotes => Approach is null ? Notes : Notes.Where(n => n != Approach).ToItems();
}
