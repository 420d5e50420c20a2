using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Whether strokes of the accompaniment go with the tune of a slot: limbs and bells have time and room, and the tune stays
/// on top, or lowest where it lies below.
/// </summary>
internal sealed class TuneFit(Slot slot, Reach reach)
{
    // The accompaniment lies at least a minor third from the tune that sounds with it. Common practice.
    private const int FromTune = 3;
    private const double Rounding = 1e-6;

    private readonly Items<Items<NearStroke>> _tunes = slot.Tunes;
    private readonly double _beat = slot.Beat.Quarters * slot.Duration.Value / slot.Length.Quarters;

    /// <summary>Whether the tune strikes on the beat on which the slot begins.</summary>
    public bool StrikesWithSlot { get; } = slot.Tunes.Any(t => t.Any(s => Math.Abs(s.After.Value) < Rounding));

    /// <summary>How long before the slot the tune struck last; forever where it has not.</summary>
    public Seconds SinceLastStroke { get; } = new(slot.Tunes
        .SelectMany(t => t.Where(s => s.After.Value < -Rounding).Select(s => -s.After.Value))
        .DefaultIfEmpty(double.PositiveInfinity)
        .Min());

    /// <summary>Which of some notes the accompaniment may take somewhere in the slot; all where the tune sets no bound.</summary>
    public IEnumerable<WrittenNote> Open(IEnumerable<WrittenNote> notes)
    {
        var sounding = _tunes.SelectMany(t => t).Where(s => s.After < slot.Duration && s.Until.Value > Rounding).ToArray();
        return sounding.Length == 0 || !SoundsThroughout(sounding) ? notes : notes.Where(n => sounding.Any(s => IsClear(n, s)));
    }

    /// <summary>Whether strokes, in order of time and each given its time from the start of the slot, go with the tune.</summary>
    public bool Allows(ReadOnlySpan<SlotStroke> strokes, ReadOnlySpan<double> times)
    {
        foreach (var tune in _tunes)
        {
            for (var i = 0; i < strokes.Length; i++)
            {
                foreach (var other in tune)
                {
                    if (!Allows(strokes[i], times[i], other))
                    {
                        return false;
                    }
                }
            }

            if (!HandsHold(tune, strokes, times))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>
    /// Whether the tune is heard as it is written beside strokes, each given its time from the start of the slot: none takes
    /// the bell that the tune strikes next, within a beat before it, and where the tune rests none lies on the note that it
    /// has left, or beyond it; before its first note the first counts. Common practice.
    /// </summary>
    public bool LeavesTuneAlone(ReadOnlySpan<SlotStroke> strokes, ReadOnlySpan<double> times)
    {
        foreach (var tune in _tunes)
        {
            for (var i = 0; i < strokes.Length; i++)
            {
                if (IsHeardAsTune(strokes[i].Note, times[i], tune))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private bool IsHeardAsTune(WrittenNote note, double at, Items<NearStroke> tune)
    {
        NearStroke? last = null;
        foreach (var stroke in tune)
        {
            if (stroke.After.Value > at + Rounding)
            {
                return (stroke.Note == note && stroke.After.Value - at <= _beat + Rounding) || (last is null ? !IsBeside(note, stroke) : LiesBeyond(note, at, last));
            }

            last = stroke;
        }

        return last is not null && LiesBeyond(note, at, last);
    }

    private bool LiesBeyond(WrittenNote note, double at, NearStroke last) => last.Until.Value <= at + Rounding && !IsBeside(note, last);

    // On the side of the tune on which the chords lie.
    private bool IsBeside(WrittenNote note, NearStroke tune) => slot.HasTuneBelow ? note > tune.Note : note < tune.Note;

    private bool Allows(SlotStroke stroke, double at, NearStroke tune)
    {
        var sounds = tune.After.Value <= at + Rounding && tune.Until.Value > at + Rounding;
        if (sounds && !IsClear(stroke.Note, tune))
        {
            return false;
        }

        var apart = at - tune.After.Value;
        if (Math.Abs(apart) < reach.AtOnce.Value - Rounding && !HandsReach(stroke, tune))
        {
            return false;
        }

        return apart >= 0
            ? reach.MayFollow(tune.Note, tune.Limb, stroke.Note, stroke.Limb, new Seconds(apart))
            : reach.MayFollow(stroke.Note, stroke.Limb, tune.Note, tune.Limb, new Seconds(-apart));
    }

    private bool IsClear(WrittenNote note, NearStroke tune) =>
        slot.HasTuneBelow ? note.Midi >= tune.Note.Midi + FromTune : note.Midi <= tune.Note.Midi - FromTune;

    private bool HandsReach(SlotStroke stroke, NearStroke tune)
    {
        if (stroke.IsPedal || tune.IsPedal || stroke.Limb == tune.Limb)
        {
            return true;
        }

        var (left, right) = stroke.Limb == Limb.LeftHand ? (stroke.Note, tune.Note) : (tune.Note, stroke.Note);
        return left <= right ? reach.HandsTake(left, right) : reach.HandsCross(left, right);
    }

    /// <summary>Notes that lie too near to a tune that strikes with them, or beyond it.</summary>
    public IEnumerable<WrittenNote> TooNear(IEnumerable<SlotTuneNote> notes) => notes
        .Where(n => slot.TuneHere.Any(t => t.After == n.After && !IsClear(n.Note, new NearStroke(t.Note, Limb.RightHand, Seconds.Zero, Seconds.Zero))))
        .Select(n => n.Note);

    // No hand takes more than two batons, and no more bells than allowed are struck, around any stroke.
    private bool HandsHold(Items<NearStroke> tune, ReadOnlySpan<SlotStroke> strokes, ReadOnlySpan<double> times)
    {
        foreach (var at in times)
        {
            var (left, right, all) = (0, 0, 0);
            for (var i = 0; i < strokes.Length; i++)
            {
                Count(strokes[i].Limb, times[i] - at);
            }

            foreach (var stroke in tune)
            {
                Count(stroke.Limb, stroke.After.Value - at);
            }

            if (!reach.HandHolds(left) || !reach.HandHolds(right) || !reach.BellsAtOnce(all))
            {
                return false;
            }

            void Count(Limb limb, double apart)
            {
                var atOnce = Math.Abs(apart) < reach.AtOnce.Value - Rounding ? 1 : 0;
                all += atOnce;
                left += limb == Limb.LeftHand ? atOnce : 0;
                right += limb == Limb.RightHand ? atOnce : 0;
            }
        }

        return true;
    }

    private bool SoundsThroughout(NearStroke[] sounding) =>
        sounding.Sum(s => Math.Min(s.Until.Value, slot.Duration.Value) - Math.Max(s.After.Value, 0)) >= (slot.Duration.Value * _tunes.Count) - 1e-3;
}
