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

    /// <summary>The slots of a plan, each with what stood in it; moved by as many octaves as the tune, whose own notes are left to it.</summary>
    internal SlotPlan In(SlotPlan plan) => plan with
    {
        Slots = plan.Slots.Select(slot => slot with { Original = new OriginalChord(Of(slot, (plan.Tune?.Octaves ?? 0) * OctaveSemitones), StayClose) }).ToItems(),
    };

    private Items<SlotTuneNote> Of(Slot slot, int semitones)
    {
        var start = slot.Hearings[0].Start;
        return Notes
            .Where(n => n.Start >= start && n.Start < start + slot.Length && n.Note.Midi + semitones is >= 0 and <= 127)
            .Select(n => new SlotTuneNote(WrittenNote.AtMidi(n.Note.Midi + semitones), n.Start - start))
            .Where(n => !slot.TuneHere.Contains(n))
            .Distinct()
            .ToItems();
    }
}
