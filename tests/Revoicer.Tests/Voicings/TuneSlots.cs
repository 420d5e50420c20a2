using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Tests.Voicings;

/// <summary>Tunes in ABC as short text, placed where they are written, and the slots under them.</summary>
internal static class TuneSlots
{
    public static readonly Seconds RollStep = new(0.06);

    /// <summary>A sheet in 4/4 in quarter notes.</summary>
    public static LeadSheet Sheet(string music, string key = "C", int tempo = 84) =>
        AbcReader.Read("kelp.abc", $"X:1\nT:Kelp\nM:4/4\nL:1/4\nQ:1/4={tempo}\nK:{key}\n{music}\n", SheetChoice.First) switch
        {
            Reading<LeadSheet>.Accepted { Value: var sheet } => sheet,
            Reading<LeadSheet>.Refused refused => throw new ArgumentException(string.Concat(refused.Problems), nameof(music)),
            _ => throw new InvalidOperationException("a reading is accepted or refused"),
        };

    public static Reach ReachOf(Tower tower) => new(PlayingLimits.For(tower), tower.Transposition);

    /// <summary>The slots of a sheet with its tune, some octaves from where it is written.</summary>
    public static SlotPlan Plan(LeadSheet sheet, Tower tower, int octaves = 0, TuneLayout layout = TuneLayout.Above)
    {
        var tempi = SheetTempi.Of(sheet, sheet.Tempo!.Value);
        var tune = new TunePlacing(sheet, tower, ReachOf(tower), tempi, ease: false, layout).All().First(t => t.Octaves == octaves);
        return SlotCutting.Cut(sheet, tempi, tune);
    }

    public static Items<Candidate> List(Slot slot, Tower tower) => new CandidateSearch(tower, ReachOf(tower), RollStep).List(slot);

    /// <summary>A candidate and the tune around its slot as strokes on the clock, a second after the start.</summary>
    public static IEnumerable<Stroke> Timed(Slot slot, Candidate candidate)
    {
        var quarter = slot.Duration * (1 / slot.Length.Quarters);
        var start = new Seconds(2);
        return candidate.Strokes
            .Select(s => new Stroke(s.Note, s.Limb, Beats.Zero, Seconds.Zero, start + (quarter * s.After.Quarters) - (RollStep * s.LeadSteps), Decibels.Zero))
            .Concat(slot.Tunes[0].Select(s => new Stroke(s.Note, s.Limb, Beats.Zero, Seconds.Zero, start + s.After, Decibels.Zero) { IsTune = true }));
    }
}
