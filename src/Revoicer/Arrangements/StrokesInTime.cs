using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Arrangements;

/// <summary>The strokes of the chosen candidates at every hearing, on the clock of the piece as played.</summary>
internal sealed class StrokesInTime
{
    private StrokesInTime(Seconds shift, Items<Items<Stroke>> ofHearing, Items<Stroke> tune)
    {
        Shift = shift;
        OfHearing = ofHearing;
        Tune = tune;
    }

    /// <summary>How much later than its tempo map the piece runs, so that the first roll has room.</summary>
    public Seconds Shift { get; }

    /// <summary>For each hearing, in order of time, its strokes in order of time.</summary>
    public Items<Items<Stroke>> OfHearing { get; }

    /// <summary>The strokes of the tune in order of time.</summary>
    public Items<Stroke> Tune { get; }

    /// <summary>All strokes in order of time, then upward.</summary>
    public Items<Stroke> All => OfHearing.SelectMany(s => s).Concat(Tune).OrderBy(s => s.At.Value).ThenBy(s => s.Note.Midi).ToItems();

    /// <summary>The chords of a plan with these strokes, on the same clock.</summary>
    public ChordInTime[] InChords(SlotPlan plan, Transposition transposition) =>
    [
        .. plan.InTime().Select((h, i) => new ChordInTime(
            ChordsInTime.ClassesOf(h.Slot, transposition), h.Hearing.At + Shift, h.Hearing.Until + Shift, OfHearing[i])),
    ];

    /// <summary>Puts candidates on the clock.</summary>
    /// <param name="plan">The slots.</param>
    /// <param name="chosen">The chosen candidate of each slot.</param>
    /// <param name="tempi">The speeds.</param>
    /// <param name="sound">Spacing of rolls, and touch.</param>
    /// <param name="instrument">The tower.</param>
    public static StrokesInTime Of(SlotPlan plan, IReadOnlyList<Candidate> chosen, TempoMap tempi, Sound sound, Instrument instrument)
    {
        var rollStep = sound.RollStep;
        var early = plan.InTime()
            .Select(h => chosen[h.Slot.Index].Strokes.Select(s => At(h.Hearing, s).Value).DefaultIfEmpty(0).Min())
            .Min();
        var shift = new Seconds(Math.Max(0, -early));
        var strokes = plan.InTime()
            .Select(h => chosen[h.Slot.Index].Strokes.Select(s => ToStroke(h.Hearing, s)).OrderBy(s => s.At.Value).ThenBy(s => s.Note.Midi).ToItems());
        var tune = (plan.Tune?.Strokes ?? [])
            .Select(s => new Stroke(s.Note, s.Limb, s.Start, Seconds.Zero, s.At + shift, sound.TuneTouch) { IsTune = true, Sheet = s.Sheet });
        return new StrokesInTime(shift, strokes.ToItems(), tune.ToItems());

        Seconds At(Hearing hearing, SlotStroke stroke) =>
            tempi.At(hearing.Start + stroke.After) - (rollStep * stroke.LeadSteps);

        Stroke ToStroke(Hearing hearing, SlotStroke stroke) => new(
            stroke.Note,
            stroke.Limb,
            hearing.Start + stroke.After,
            rollStep * stroke.LeadSteps,
            At(hearing, stroke) + shift,
            instrument.TouchOf(stroke.Note));
    }
}
