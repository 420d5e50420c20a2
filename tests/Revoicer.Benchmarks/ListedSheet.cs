using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Benchmarks;

/// <summary>A sheet cut into slots on the default tower, with all candidates: what is priced and searched.</summary>
/// <param name="Plan">The slots; a tune is taken an octave higher than written, or in the first octave that fits.</param>
/// <param name="Candidates">The candidates of each slot.</param>
internal sealed record ListedSheet(SlotPlan Plan, Items<Candidate>[] Candidates)
{
    public static ListedSheet Of(LeadSheet sheet)
    {
        var tower = ShippedTowers.Default;
        var reach = new Reach(PlayingLimits.For(tower), tower.Transposition);
        var tempi = SheetTempi.Of(sheet, new Tempo(sheet.Bars[0].Meter.Beat, 84));
        var tunes = new TunePlacing(sheet, tower, reach, tempi, ease: false).All().ToArray();
        var plan = SlotCutting.Cut(sheet, tempi, tunes.FirstOrDefault(t => t.Octaves == 1) ?? tunes.FirstOrDefault());
        var search = new CandidateSearch(tower, reach, ShippedSounds.Default.RollStep);
        return new ListedSheet(plan, [.. plan.Slots.Select(search.List)]);
    }
}
