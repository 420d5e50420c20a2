using Revoicer.Prices;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>Says what stands in the way where a chord cannot have what every chord of its kind should: a bell, the tune, or the time.</summary>
/// <param name="instrument">The tower, and what limbs reach on it.</param>
internal sealed class InTheWay(Instrument instrument)
{
    /// <summary>Why no voicing has the root or the slash bass in the lowest bell, as a sentence.</summary>
    public string OfRootLowest(Slot slot)
    {
        var tower = instrument.Tower;
        var lowest = slot.Symbol.Lowest;
        var hasPedal = tower.Bells.Any(b => tower.HasPedal(b.Note) && b.Note.PitchClass == lowest.PitchClass);
        var why = hasPedal ? $"the tune lies too near to the pedals on {lowest}, or strikes them itself" : $"{tower.Name} has no pedal on {lowest}";
        return $"{slot.Place}, {slot.Symbol}: {why}, so another tone lies lowest";
    }

    /// <summary>What the voicings left for a chord lack of the tones asked for, as a sentence; null where one of them lacks nothing.</summary>
    /// <param name="slot">The chord.</param>
    /// <param name="left">The voicings left.</param>
    public string? OfTones(Slot slot, IReadOnlyList<Candidate> left)
    {
        // Who asks for whole voicings asks for no other tones to ring on.
        var demand = ToneDemand.On(instrument.Tower, slot.Asked.Count > 0 ? slot with { Shared = default } : slot);
        if (left.Count == 0 || left.Any(c => !Figures.Of(c.Figure).IsManner || demand.IsMet(c.Voicing)))
        {
            return null;
        }

        // Only where whole voicings are asked for does a wish bring voicings with fewer tones; a ban never does.
        if (slot.Asked.Count == 0)
        {
            return $"{slot.Place}, {slot.Symbol}: fewer tones than asked for, so that {slot.Symbol.Lowest} lies lowest; {WhyFewer(slot, demand)}";
        }

        string[] missing = [.. demand.Missing(left[0].Voicing).Select(t => $"{t.Name}{(slot.Shared.Contains(t.PitchClass) ? " (unless it rings on from the chord before)" : "")}")];
        return $"{slot.Place}, {slot.Symbol}: {(missing.Length == 0 ? "with fewer different tones than asked for" : $"without {string.Join(" and ", missing)}")}, as you wish";
    }

    private string WhyFewer(Slot slot, ToneDemand demand)
    {
        var search = new CandidateSearch(instrument.Tower, instrument.Reach, instrument.RollStep);
        var isReached = slot.Tunes.Count > 0
            && search.List(slot with { Tunes = [] }).Any(c => slot.HasRootLowest(c.Voicing) && demand.IsMet(c.Voicing));
        return isReached ? "the tune leaves the hands no room or time for more" : "hands and feet reach no more";
    }
}
