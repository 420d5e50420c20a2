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
        SlotStroke[] feet = Pedals(voicing);
        SlotStroke[] hands = [.. voicing.Upper.Select(b => new SlotStroke(b.Note, b.Limb, Beats.Zero, 0))];
        SlotStroke[] all = [.. feet, .. hands];
        var site = new FigureSite(slot, feet.Length, hands.Length);
        var isGrip = IsGrip(voicing.Upper);
        foreach (var row in Figures.All.Where(row => isGrip || !row.NeedsGrip))
        {
            var strokes = row.Places(site) is not { } places ? null
                : row.IsRoll ? Rolled(slot.HasTuneBelow ? [.. all.Reverse()] : all, fit)
                : Struck(places, feet, hands, all);
            if (strokes is { } playable && IsPlayable(slot, playable, fit, isAsked))
            {
                yield return new Candidate(row.Figure, voicing, playable);
            }
        }
    }

    private static Items<SlotStroke>? Struck(IReadOnlyList<PartAt> places, SlotStroke[] feet, SlotStroke[] hands, SlotStroke[] all) =>
        places.SelectMany(place => place.Part switch
        {
            Part.All => all,
            Part.Bass => feet,
            Part.Rest => hands,
            _ => all[place.Number..(place.Number + 1)],
        }, (place, stroke) => stroke with { After = place.After }).ToItems();

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
