using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Tests.Oracles;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Prices;

/// <summary>What it is worth to lead into the next bass, and what it costs, on a tower whose pedals are the white keys from C3.</summary>
public sealed class ApproachPriceTests
{
    private static readonly Tower Tower = SmallSheets.TowerOf("Slipway, white pedals", 48, 50, 52, 53, 55, 57, 59, 60, 64, 67, 72);

    private static readonly Sound Sound = ShippedSounds.Default with { Approach = 40 };

    private static readonly SlotPlan Plan = ApproachTones.Marked(SlotCutting.Cut(
        SmallSheets.Sheet(["C", "F", "G7 C", "C"]) with { Key = new KeySignature(NoteName.AtFifths(0), Mode.Major) }, TempoMap.Steady(new Tempo(Beats.OfQuarters(1), 90))));

    private static readonly Instrument Instrument = new(Tower, Sound);

    private static readonly Items<Items<Candidate>> Listed = Plan.Slots.Select(new CandidateSearch(Tower, Instrument.Reach, Sound.RollStep).List).ToItems();

    [Law]
    public void Bass_and_line_are_priced_as_they_are_heard(int seed)
    {
        var all = WithAll();
        var sheet = new PricedSheet(Plan, Sound, Listed, all);
        var choice = WithApproaches(new Random(seed));
        var slow = new StrokeByStroke(sheet, choice);
        var terms = all.WholeTerms(choice);

        Assert.Equal(slow.Bass(), (long)terms[Term.Bass] + terms[Term.BassLine]);
        Assert.Equal(slow.Approach(), terms[Term.Approach]);
    }

    [Law]
    public void What_is_left_out_is_cheaper_without_the_tone_in_every_choice(int seed)
    {
        var all = WithAll();
        var left = SheetPrices.Of(Instrument, Sound, Plan, Listed, TestContext.Current.CancellationToken);
        var random = new Random(seed);
        var choice = WithApproaches(random);
        var dropped = 0;
        for (var slot = 0; slot < choice.Length; slot++)
        {
            var kept = left.Candidates(slot).ToHashSet();
            foreach (var (number, candidate) in Listed[slot].Index().Where(c => !kept.Contains(c.Item)))
            {
                dropped++;
                var without = Listed[slot].ToList().FindIndex(c => c.Approach is null && c.Figure == candidate.Figure && c.Voicing == candidate.Voicing);
                int[] with = [.. choice];
                (with[slot], choice[slot]) = (number, without);
                Assert.True(all.Whole(choice) <= all.Whole(with));
            }
        }

        Assert.True(dropped > 0, "nothing was left out");
    }

    // Half of the chords that can have one get an approach tone.
    private static int[] WithApproaches(Random random) =>
    [
        .. Listed.Select(candidates =>
        {
            int[] leading = [.. candidates.Index().Where(c => c.Item.Approach is not null).Select(c => c.Index)];
            return leading.Length > 0 && random.Next(2) == 0 ? leading[random.Next(leading.Length)] : random.Next(candidates.Count);
        }),
    ];

    // The prices with nothing left out.
    private static SheetPrices WithAll()
    {
        var chords = new ChordsInTime(Plan, Tower.Transposition);
        var tune = new TuneInTime(Instrument, Sound, Plan.Tune);
        return new SlotPricing(Instrument, Sound, Plan).Linked(
            Plan, [.. Plan.Slots.Select((slot, i) => new PricedSlot(Instrument, Sound, slot, Listed[i], chords, tune))], TestContext.Current.CancellationToken);
    }
}
