using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>Turns the bells of a chord into strokes, in every figure that fits its slot and can be played.</summary>
internal sealed class FigureStrokes(Tower tower, Reach reach, Seconds rollStep)
{
    private readonly WrittenNote _middlePedal = WrittenNote.AtMidi((tower.PedalsFrom.Midi + tower.PedalsTo.Midi) / 2);

    /// <summary>The candidates of one voicing.</summary>
    /// <param name="slot">The slot.</param>
    /// <param name="voicing">Its bells and limbs.</param>
    /// <param name="fit">What of the tune it has to do with.</param>
    /// <param name="isAsked">Whether the player asks for these bells, wherever the tune lies.</param>
    public IEnumerable<Candidate> Of(Slot slot, Voicing voicing, TuneFit fit, bool isAsked = false)
    {
        bool Goes(Items<SlotStroke> strokes) => IsPlayable(slot, strokes, fit, isAsked);

        var pedals = Pedals(voicing);
        var hands = voicing.Upper.Select(b => new SlotStroke(b.Note, b.Limb, Beats.Zero, 0)).ToArray();
        SlotStroke[] all = [.. pedals, .. hands];
        var together = all.ToItems();
        var isGrip = IsGrip(voicing.Upper);
        if (isGrip && Goes(together))
        {
            yield return new Candidate(Figure.Together, voicing, together);
        }

        if (isGrip && all.Length >= 2 && !slot.IsPassing && Rolled(slot.HasTuneBelow ? [.. all.Reverse()] : all, fit) is { } rolled && Goes(rolled))
        {
            yield return new Candidate(Figure.Rolled, voicing, rolled);
        }

        // The last chord is struck together or rolled; where the hands come too late for that, after its bass.
        foreach (var (figure, strokes) in Spread(slot, pedals, hands, all).Where(s => (!slot.IsLast || s.Figure == Figure.BassFirst) && (isGrip || s.Figure == Figure.Broken)))
        {
            if (Goes(strokes))
            {
                yield return new Candidate(figure, voicing, strokes);
            }
        }
    }

    /// <summary>Whether each hand can take its batons at once.</summary>
    /// <param name="hands">What the hands take, upward, the left below the right.</param>
    public bool IsGrip(Items<Baton> hands)
    {
        Span<WrittenNote> notes = stackalloc WrittenNote[hands.Count];
        var left = 0;
        for (var i = 0; i < notes.Length; i++)
        {
            notes[i] = hands[i].Note;
            left += hands[i].Limb == Limb.LeftHand ? 1 : 0;
        }

        return reach.HandTakes(notes[..left]) && reach.HandTakes(notes[left..]);
    }

    /// <summary>The bass moving with the tune, the hands striking with its first note; null where that cannot be played.</summary>
    public Candidate? InTenths(Slot slot, Voicing voicing, BassLine line, TuneFit fit)
    {
        var hands = voicing.Upper.Select(b => new SlotStroke(b.Note, b.Limb, Beats.Zero, 0));
        Items<SlotStroke> strokes = [line.Strokes[0], .. hands, .. line.Strokes.Skip(1)];
        return !slot.IsLast && IsPlayable(slot, strokes, fit) ? new Candidate(Figure.InTenths, voicing, strokes) : null;
    }

    // The figures that take more than one beat.
    private static IEnumerable<(Figure Figure, Items<SlotStroke> Strokes)> Spread(Slot slot, SlotStroke[] pedals, SlotStroke[] hands, SlotStroke[] all)
    {
        var hasBoth = pedals.Length > 0 && hands.Length > 0;
        if (hasBoth && !slot.IsPassing && (slot.IsLast || slot.Length > slot.Beat))
        {
            yield return (Figure.BassFirst, [.. pedals, .. hands.Select(h => h with { After = NextBeat(slot) })]);
        }

        var weakBeats = WeakBeats(slot).ToArray();
        if (hasBoth && slot.IsStrong && weakBeats.Length >= 2)
        {
            yield return (Figure.Afterbeats, [.. pedals, .. weakBeats.SelectMany(beat => hands.Select(h => h with { After = beat }))]);
        }

        if (all.Length >= 3 && slot.Beat * all.Length <= slot.Length)
        {
            yield return (Figure.Broken, [.. all.Select((stroke, i) => stroke with { After = slot.Beat * i })]);
        }
    }

    /// <summary>The foot of a pedal's half of the board.</summary>
    public Limb FootOf(WrittenNote pedal) => pedal <= _middlePedal ? Limb.LeftFoot : Limb.RightFoot;

    private SlotStroke[] Pedals(Voicing voicing) => (voicing.Bass, voicing.SecondPedal) switch
    {
        ({ } bass, { } second) => [new(bass, Limb.LeftFoot, Beats.Zero, 0), new(second, Limb.RightFoot, Beats.Zero, 0)],
        ({ } bass, null) => [new(bass, FootOf(bass), Beats.Zero, 0)],
        _ => [],
    };

    // Towards the tune (upward where there is none), the last tone on the beat, or a step before it where the tune strikes there; null where it would begin less
    // than half-way from the tune's last stroke. The strokes in order of time.
    private Items<SlotStroke>? Rolled(SlotStroke[] inOrder, TuneFit fit)
    {
        var first = inOrder.Length - 1 + (fit.StrikesWithSlot ? 1 : 0);
        return rollStep.Value * first > fit.SinceLastStroke.Value / 2
            ? null
            : inOrder.Select((stroke, i) => stroke with { LeadSteps = first - i }).ToItems();
    }

    private static Beats NextBeat(Slot slot)
    {
        if (slot.Length <= slot.Beat)
        {
            return slot.Length / 2;
        }

        var intoBeat = slot.InBar - (slot.Beat * Beats.WholeTimes(slot.InBar, slot.Beat));
        return slot.Beat - intoBeat;
    }

    // The beats of the bar after the first of the slot and before its end that are not strong.
    private static IEnumerable<Beats> WeakBeats(Slot slot)
    {
        for (var after = slot.Beat; after < slot.Length; after += slot.Beat)
        {
            var inBar = slot.InBar + after;
            var bars = Beats.WholeTimes(inBar, slot.Meter.Bar);
            if (!slot.Meter.IsStrong(inBar - (slot.Meter.Bar * bars)))
            {
                yield return after;
            }
        }
    }

    /// <summary>Whether strokes, in order of time, can follow each other and go with the tune.</summary>
    /// <param name="slot">The slot.</param>
    /// <param name="strokes">The strokes.</param>
    /// <param name="fit">What of the tune they have to do with.</param>
    /// <param name="isAsked">Whether they are what somebody wrote, so that it is no matter whether they are heard as tune.</param>
    public bool IsPlayable(Slot slot, Items<SlotStroke> strokes, TuneFit fit, bool isAsked = false)
    {
        Span<double> times = stackalloc double[strokes.Count];
        var secondsPerQuarter = slot.Duration.Value / slot.Length.Quarters;
        for (var later = 0; later < strokes.Count; later++)
        {
            var b = strokes[later];
            times[later] = (b.After.Quarters * secondsPerQuarter) - (b.LeadSteps * rollStep.Value);
            for (var earlier = 0; earlier < later; earlier++)
            {
                var a = strokes[earlier];
                var after = new Seconds(times[later] - times[earlier]);
                if (after.Value > 0 && !reach.MayFollow(a.Note, a.Limb, b.Note, b.Limb, after))
                {
                    return false;
                }
            }
        }

        return fit.Allows(strokes.AsSpan(), times) && (isAsked || fit.LeavesTuneAlone(strokes.AsSpan(), times));
    }
}
