using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Tones that lead by step into the next bass: on the weak last beat of a slot a tone of the key, or a semitone below the bass
/// to come. Common practice.
/// </summary>
internal sealed class ApproachTones(Tower tower, FigureStrokes figures)
{
    private const int WholeTone = 2;
    private const int Octave = 12;

    // A leap into an approach tone would be heard more than what it leads to.
    private const int Fifth = 7;

    /// <summary>The same slots, each with the bass to which a tone may lead.</summary>
    public static SlotPlan Marked(SlotPlan plan)
    {
        var next = plan.InTime().Zip(plan.InTime().Skip(1)).ToLookup(pair => pair.First.Slot.Index, pair => (pair.First.Hearing.Until, pair.Second));
        return plan with { Slots = plan.Slots.Select(slot => slot with { LeadsTo = BassAfter(slot, [.. next[slot.Index]]) }).ToItems() };
    }

    /// <summary>What is listed for a slot, each with an approach tone besides, where a foot can take one.</summary>
    public IEnumerable<Candidate> Of(Slot slot, IEnumerable<Candidate> listed, TuneFit fit)
    {
        if (slot.LeadsTo is not { } next)
        {
            yield break;
        }

        WrittenNote[] tones = [.. tower.Bells.Select(b => b.Note).Where(tower.HasPedal)];
        var at = slot.Length - slot.Beat;
        foreach (var candidate in listed.Where(c => c.Figure is Figure.Together or Figure.BassFirst or Figure.Broken && c.Voicing.SecondPedal is null && c.Strokes[^1].After < at))
        {
            foreach (var tone in tones.Where(n => candidate.Voicing.Bass is { } bass && Leads(slot, bass, n, next) && IsBelow(n, candidate)))
            {
                Items<SlotStroke> strokes = [.. candidate.Strokes, new SlotStroke(tone, figures.FootOf(tone), at, 0)];
                if (figures.IsPlayable(slot, strokes, fit))
                {
                    yield return candidate with { Strokes = strokes, Approach = tone };
                }
            }
        }
    }

    private static bool IsBelow(WrittenNote tone, Candidate candidate) => candidate.Voicing.Upper.Count == 0 || tone < candidate.Voicing.Upper[0].Note;

    private static PitchClass? BassAfter(Slot slot, (Seconds Until, (Slot Slot, Hearing Hearing) Next)[] after)
    {
        var at = slot.InBar + slot.Length - slot.Beat;
        var inBar = at - (slot.Meter.Bar * Beats.WholeTimes(at, slot.Meter.Bar));
        if (slot.HasTuneBelow || slot.IsLast || slot.Length < slot.Beat * 2 || slot.Meter.IsStrong(inBar) || after.Length < slot.Hearings.Count)
        {
            return null;
        }

        var basses = after.Select(a => a.Next.Slot.Symbol.Lowest.PitchClass).Distinct().ToArray();
        return basses is [var bass]
            && after.All(a => a.Next.Slot.Phrase == slot.Phrase && a.Until >= a.Next.Hearing.At)
            && Apart(slot.Symbol.Lowest.PitchClass, bass) is > WholeTone and < Octave - WholeTone
                ? bass
                : null;
    }

    // On the way from the bass to the next one, and a step before it: a tone of the key from either side, or a semitone below.
    private static bool Leads(Slot slot, WrittenNote bass, WrittenNote tone, PitchClass next)
    {
        var way = (tone - bass).Semitones;
        var step = way > 0 ? Apart(tone.PitchClass, next) : Apart(next, tone.PitchClass);
        return way is not 0 and >= -Fifth and <= Fifth
            && ((way > 0 && step == 1) || (step is > 0 and <= WholeTone && slot.Key?.Scale.Contains(tone.PitchClass) == true));
    }

    private static int Apart(PitchClass from, PitchClass to) => (to.Value - from.Value + Octave) % Octave;
}
