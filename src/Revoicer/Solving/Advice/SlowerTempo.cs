using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Advice;

/// <summary>Finds the fastest tempo at which chords can be played as the player wishes, by trying.</summary>
/// <param name="sheet">The sheet in the key played.</param>
/// <param name="tower">The tower.</param>
/// <param name="reach">What hands and feet can do.</param>
/// <param name="sound">The sound, for the spacing of rolls.</param>
/// <param name="ease">Whether notes of the tune that come too soon are left out.</param>
/// <param name="cut">How the player wants the sheet cut.</param>
public sealed class SlowerTempo(LeadSheet sheet, Tower tower, Reach reach, Sound sound, bool ease, CutWish cut)
{
    // The slowest tempo that can be asked for, in beats of the metre a minute.
    private const int Slowest = 20;

    // Steps down are a twentieth; then the fastest whole number in between is looked for.
    private const double Step = 0.95;

    /// <summary>
    /// The tempo, in whole beats of the metre a minute; null where slowness does not help, or where rules that count over
    /// several chords are among those that cannot be kept.
    /// </summary>
    /// <param name="rules">The rules that cannot be kept now.</param>
    /// <param name="perMinute">The tempo now.</param>
    /// <param name="placed">Where the tune lies; null where there is none.</param>
    public int? For(IReadOnlyList<Rule> rules, double perMinute, PlacedTune? placed)
    {
        if (rules.Any(r => r is not (SlotRule or TimeToMove)))
        {
            return null;
        }

        SlotRule[] onSlots = [.. rules.OfType<SlotRule>()];
        var withMoves = rules.Any(r => r is TimeToMove);
        var above = (int)Math.Ceiling(perMinute);
        for (var tried = perMinute * Step; tried >= Slowest; tried *= Step)
        {
            var tempo = (int)Math.Floor(tried);
            if (!Does(onSlots, withMoves, tempo, placed))
            {
                above = tempo;
                continue;
            }

            while (tempo + 1 < above && Does(onSlots, withMoves, tempo + 1, placed))
            {
                tempo++;
            }

            return tempo;
        }

        return null;
    }

    private bool Does(SlotRule[] rules, bool withMoves, int perMinute, PlacedTune? placed)
    {
        var tempi = TempoMap.Steady(new Tempo(sheet.Bars[0].Meter.Beat, perMinute));
        var tune = placed is null
            ? null
            : new TunePlacing(sheet, tower, reach, tempi, ease, placed.Layout).All().First(t => t.Octaves == placed.Octaves);
        var search = new CandidateSearch(tower, reach, sound.RollStep);
        var listed = new List<(Slot Slot, Candidate[] Candidates)>();
        foreach (var slot in SlotCutting.Cut(sheet, tempi, tune, cut).Slots.Where(slot => rules.Any(r => r.Concerns(slot))))
        {
            listed.Add((slot, Allowed(slot, search.List(slot), rules)));
            if (listed[^1].Candidates.Length == 0)
            {
                return false;
            }
        }

        return listed.Count > 0 && (!withMoves || listed.All(earlier => listed.All(later => GoTogether(earlier, later))));
    }

    private static Candidate[] Allowed(Slot slot, Items<Candidate> candidates, SlotRule[] rules)
    {
        Candidate[] left = [.. candidates];
        foreach (var rule in rules.Where(r => r.Concerns(slot)))
        {
            Candidate[] kept = [.. left.Where(c => rule.Allows(slot, c))];
            left = kept.Length == 0 && rule is not WishRule ? left : kept;
        }

        return left;
    }

    private bool GoTogether((Slot Slot, Candidate[] Candidates) earlier, (Slot Slot, Candidate[] Candidates) later)
    {
        var apart = earlier.Slot.Hearings
            .SelectMany(_ => later.Slot.Hearings, (a, b) => b.At.Value - a.At.Value)
            .Where(distance => distance > 0 && distance < earlier.Slot.Duration.Value + reach.LongestEasyTime.Value)
            .ToArray();
        return apart.Length == 0 || earlier.Candidates.Any(a => later.Candidates.Any(b =>
            (!ReferenceEquals(earlier.Candidates, later.Candidates) || ReferenceEquals(a, b))
            && apart.All(distance => MayFollow(Times(earlier.Slot, a, 0), Times(later.Slot, b, distance)))));
    }

    private bool MayFollow(IEnumerable<(SlotStroke Stroke, double At)> before, IEnumerable<(SlotStroke Stroke, double At)> after) =>
        before.All(a => after.All(b => b.At >= a.At
            ? b.At - a.At >= reach.AtOnce.Value && reach.MayFollow(a.Stroke.Note, a.Stroke.Limb, b.Stroke.Note, b.Stroke.Limb, new Seconds(b.At - a.At))
            : a.At - b.At >= reach.AtOnce.Value && reach.MayFollow(b.Stroke.Note, b.Stroke.Limb, a.Stroke.Note, a.Stroke.Limb, new Seconds(a.At - b.At))));

    private IEnumerable<(SlotStroke Stroke, double At)> Times(Slot slot, Candidate candidate, double from) => candidate.Strokes.Select(s =>
        (s, from + (s.After.Quarters * slot.Duration.Value / slot.Length.Quarters) - (s.LeadSteps * sound.RollStep.Value)));
}
