using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer;

/// <summary>What stands under the tune of music that is voiced anew.</summary>
/// <param name="Notes">As heard, in order of start.</param>
/// <param name="StayClose">How close the new voicing is to stay: 0 (it stays where it is the best) to 1.</param>
public sealed record OriginalNotes(Items<HeardNote> Notes, double StayClose)
{
    private const int OctaveSemitones = 12;

    /// <summary>
    /// The slots of a plan, each with what stood in it; moved by as many octaves as the tune, whose own notes are left to it. What is to
    /// stay close leaves no tone to the chord before that it struck itself.
    /// </summary>
    internal SlotPlan In(SlotPlan plan) => plan with
    {
        Slots = plan.Slots.Select(slot => With(slot, OriginalOf(slot, plan.Tune?.Octaves ?? 0))).ToItems(),
    };

    private Slot With(Slot slot, OriginalChord original) => slot with
    {
        Original = original,
        Shared = StayClose > 0 ? slot.Shared.Except(PitchClassSet.Of(original.Notes.Select(n => n.Note.PitchClass))) : slot.Shared,
    };

    private OriginalChord OriginalOf(Slot slot, int octaves) => new(Of(slot, octaves, Notes), StayClose)
    {
        Voices = VoicesIn(Notes, slot.Hearings[0].Start, slot.Length, slot.Tunes.Count > 0),
        ForFeet = Of(slot, octaves, Notes.Where(n => n.IsForFeet)),
    };

    /// <summary>How many voices sound together at most in a stretch of the piece as heard; what is held counts with what is struck.</summary>
    internal static int VoicesIn(Items<HeardNote> notes, Beats start, Beats length, bool hasTune)
    {
        var sounding = notes.Where(n => n.Start < start + length && n.End > start).ToArray();
        var most = sounding.Select(n => n.Start > start ? n.Start : start).Distinct()
            .Select(at => sounding.Count(n => n.Start <= at && n.End > at)).DefaultIfEmpty(0).Max();
        return most + (hasTune ? 1 : 0);
    }

    /// <summary>A note moved with the tune; null where MIDI has no such note, so that no slot can have it.</summary>
    internal static WrittenNote? Moved(WrittenNote note, int octaves) =>
        note.Midi + (octaves * OctaveSemitones) is >= 0 and <= 127 and var midi ? WrittenNote.AtMidi(midi) : null;

    // What stands in any of its hearings: a note that is tied over the first time may be struck the second.
    private static Items<SlotTuneNote> Of(Slot slot, int octaves, IEnumerable<HeardNote> notes) => slot.Hearings
        .SelectMany(h => notes.Where(n => n.Start >= h.Start && n.Start < h.Start + slot.Length), (h, n) => (Note: Moved(n.Note, octaves), After: n.Start - h.Start))
        .Where(n => n.Note is not null)
        .Select(n => new SlotTuneNote(n.Note!.Value, n.After))
        .Where(n => !slot.TuneHere.Contains(n))
        .Distinct()
        .OrderBy(n => n.After)
        .ThenBy(n => n.Note)
        .ToItems();
}
