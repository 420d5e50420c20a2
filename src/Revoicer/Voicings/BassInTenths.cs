using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Finds the bass that goes with the tune of a slot a tenth below it, or a seventeenth, note for note (common practice).
/// Whether the tenth is major or minor the chord says, and where both or neither of the two is a tone of the chord, the key. The
/// first note and the last are tones of the chord; between them a tone of the key may pass, no longer than a beat and not
/// on a strong beat, if it is reached and left by step. One distance holds through a slot.
/// </summary>
internal sealed class BassInTenths(Tower tower, Reach reach)
{
    // Semitones of the minor tenth and of the minor seventeenth; the major ones have one more.
    private static readonly int[] Distances = [15, 27];
    private const int WholeTone = 2;

    /// <summary>The lines, the nearer first; none where the tune has fewer than two notes or does not strike with the slot.</summary>
    public IReadOnlyList<BassLine> Of(Slot slot) =>
        slot.TuneHere.Count < 2 || slot.TuneHere[0].After != Beats.Zero
            ? []
            : [.. Distances.Select(distance => Line(slot, distance)).OfType<WrittenNote[]>().Select(line => Struck(slot, line))];

    private WrittenNote[]? Line(Slot slot, int distance)
    {
        var line = slot.TuneHere.Select(n => Below(slot, n.Note, distance)).ToArray();
        var bass = line.OfType<WrittenNote>().ToArray();
        return bass.Length == line.Length && Enumerable.Range(0, bass.Length).All(i => IsTone(slot, bass[i]) || Passes(slot, bass, i))
            ? bass
            : null;
    }

    // The pedal a tenth below, major or minor as the chord has it, else as the key has it; null where neither has.
    private WrittenNote? Below(Slot slot, WrittenNote tune, int distance)
    {
        WrittenNote[] both = [.. new[] { distance, distance + 1 }.Where(d => d <= tune.Midi).Select(d => WrittenNote.AtMidi(tune.Midi - d)).Where(tower.HasPedal)];
        var tones = both.Where(n => IsTone(slot, n)).ToArray();
        var inKey = (tones.Length > 0 ? tones : both).Where(n => slot.Key?.Scale.Contains(n.PitchClass) == true).ToArray();
        return inKey.Concat(tones).Select(n => (WrittenNote?)n).FirstOrDefault();
    }

    private static bool IsTone(Slot slot, WrittenNote note) => slot.Symbol.PitchClasses.Contains(note.PitchClass);

    private static bool Passes(Slot slot, WrittenNote[] bass, int i)
    {
        if (i == 0 || i == bass.Length - 1)
        {
            return false;
        }

        var after = slot.TuneHere[i].After;
        var inBar = slot.InBar + after;
        var fromBarLine = inBar - (slot.Meter.Bar * Beats.WholeTimes(inBar, slot.Meter.Bar));
        return !slot.Meter.IsStrong(fromBarLine)
            && slot.TuneHere[i + 1].After - after <= slot.Beat
            && IsStep(bass[i - 1], bass[i])
            && IsStep(bass[i], bass[i + 1]);
    }

    private static bool IsStep(WrittenNote a, WrittenNote b) => (b - a).Size.Semitones is > 0 and <= WholeTone;

    private BassLine Struck(Slot slot, WrittenNote[] bass)
    {
        var quarter = slot.Duration * (1 / slot.Length.Quarters);
        LineNote[] line = [.. bass.Select((note, i) => new LineNote(note, quarter * slot.TuneHere[i].After.Quarters))];
        var feet = LimbPlan.Of(reach, LineLimbs.Feet(tower), line);
        return new BassLine(
            bass.Select((note, i) => new SlotStroke(note, feet[i], slot.TuneHere[i].After, 0)).ToItems(),
            bass.Skip(1).Where(note => IsTone(slot, note) && note != bass[0]).Distinct().ToItems());
    }
}
