using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Prices;

/// <summary>What it costs that a tune is hard to hear, by hand from what docs/sounds.md says of its words.</summary>
public sealed class TuneHeardTests
{
    // A held C5 and the bells that the chord may have under it.
    private const string Held = "X:1\nT:Kelp\nM:4/4\nL:1/1\nQ:1/4=84\nK:C\n\"C\"c | \"F\"c | \"C\"c |]\n";

    // So soft a tune that some chords drown it.
    private static readonly Sound Sound = ShippedSounds.Default with { TuneTouch = new Decibels(-6) };

    private static readonly PricedSheet Sheet = Priced(Held);

    // Under C5 (72) a minor sixth lies at E4 (64), a fifth at F4, a fourth at G4, a major third at G#4.
    [Fact]
    public void A_stroke_under_a_held_note_costs_each_semitone_by_which_it_comes_closer_than_a_sixth()
    {
        var closest = 0.0;
        for (var number = 0; number < Sheet.Candidates[1].Count; number++)
        {
            var candidate = Sheet.Candidates[1][number];
            var near = candidate.Strokes.Where(s => s.After.Quarters > 0).Sum(s => Math.Max(0, 8 - (72 - s.Note.Midi)));
            closest = Math.Max(closest, near);
            Assert.Equal((int)Math.Round(1000 * Sound.NearTune * near), Sheet.Prices.TermsAlone(1, number)[Term.NearTune], 1.0);
        }

        Assert.True(closest >= 5, "no stroke as near as a third was listed");
    }

    // Levels add up as energies.
    [Fact]
    public void A_stroke_of_the_tune_costs_each_decibel_by_which_it_lies_further_than_six_under_what_is_struck_with_it()
    {
        var instrument = Sheet.Prices.Instrument;
        double Energy(int midi, double level) =>
            Math.Pow(10, level / 10) * instrument.Carry.CarryEnergy(instrument.BellAtMidi(midi), Seconds.Zero, new Seconds(0.25));
        var drowned = 0;
        for (var number = 0; number < Sheet.Candidates[1].Count; number++)
        {
            var candidate = Sheet.Candidates[1][number];
            var with = candidate.Strokes.Where(s => s.After.Quarters == 0 && s.LeadSteps == 0).Sum(s => Energy(s.Note.Midi, s.Note.Midi < 60 ? Sound.HeavyTouch.Value : 0));
            var over = Math.Max(0, (10 * Math.Log10(with / Energy(72, Sound.TuneTouch.Value))) - 6);
            drowned += over > 0 ? 1 : 0;
            Assert.Equal(1000 * Sound.Drowned * over, Sheet.Prices.TermsAlone(1, number)[Term.Drowned], 0.6);
        }

        Assert.True(drowned > 0, "no candidate drowned the tune");
    }

    [Fact]
    public void What_is_drowned_is_said_with_its_count_and_place()
    {
        var sheet = RevoicingTests.Read("kelp.abc", Held);
        SoftTune In(double tune) => Assert.IsType<Drafting.Made>(Revoicing.Draft(
            sheet, ShippedTowers.Default, Sound with { TuneTouch = new Decibels(tune), Drowned = 0 }, DraftWish.None, null, TestContext.Current.CancellationToken)).Arrangement.Totals.SoftTune;

        Assert.Equal(SoftTune.None, In(12));
        Assert.InRange(In(-12).Count, 1, 3);
        Assert.True(In(-12).Under.Value > 6);
    }

    private static PricedSheet Priced(string abc)
    {
        var (sheet, tower) = (RevoicingTests.Read("kelp.abc", abc), ShippedTowers.Default);
        var tempi = SheetTempi.Of(sheet);
        var tune = new TunePlacing(sheet, tower, new Instrument(tower, Sound).Reach, tempi, false, TuneLayout.Above).All().First(t => t.Octaves == 0);
        return SmallSheets.Priced(SlotCutting.Cut(sheet, tempi, tune), tower, Sound);
    }
}
