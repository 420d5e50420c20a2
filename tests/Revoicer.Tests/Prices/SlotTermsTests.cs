using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Tests.Oracles;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Prices;

/// <summary>Terms of single chords, by hand from what docs/sounds.md says of their numbers.</summary>
public sealed class SlotTermsTests
{
    private static readonly Sound Sound = ShippedSounds.Default;

    // At 90 quarters a minute a bar of 4/4 lasts 2.7 s; at 160 it lasts exactly 1.5 s. The second bar begins no phrase and ends
    // nothing.
    [Theory]
    [InlineData(90, "G7", 3, 0.25)]
    [InlineData(90, "G5", 2, 0)]
    [InlineData(160, "G7", 3, 0)]
    [InlineData(159, "G7", 3, 0.25)]
    public void A_roll_forgone_on_three_bells_over_a_second_and_a_half_costs_a_quarter(int quarters, string symbol, int bells, double share)
    {
        var sheet = SmallSheets.Priced(SmallSheets.Sheet(["C", symbol, "C", "F"]), SmallSheets.EightBells, Sound, quarters);
        var together = Candidates(sheet, 1).Where(c => c.Candidate.Figure == Figure.Together && c.Candidate.Voicing.Bells == bells).ToArray();

        Assert.NotEmpty(together);
        Assert.All(together, c => Assert.Equal(
            (int)Math.Round(1000 * share * Sound.RollForgone), sheet.Prices.TermsAlone(1, c.Number)[Term.Figure]));
    }

    [Fact]
    public void A_roll_forgone_where_a_phrase_begins_costs_the_whole()
    {
        var sheet = SmallSheets.Priced(SmallSheets.Sheet(["C", "G7"]), SmallSheets.EightBells, Sound);
        var together = Candidates(sheet, 0).Where(c => c.Candidate.Figure == Figure.Together && c.Candidate.Voicing.Bells >= 2).ToArray();

        Assert.NotEmpty(together);
        Assert.All(together, c => Assert.Equal((int)Math.Round(1000 * Sound.RollForgone), sheet.Prices.TermsAlone(0, c.Number)[Term.Figure]));
    }

    // An octave and a fifth are a twelfth (common practice): 12 + 7 semitones.
    [Fact]
    public void The_gap_above_the_bass_costs_each_semitone_beyond_a_twelfth_and_twice_beyond_two_octaves()
    {
        var sheet = SmallSheets.Priced(SmallSheets.Sheet(["C", "G7", "C"]), ShippedTowers.Default, Sound);
        var beyond = new SortedSet<int>();
        foreach (var (candidate, number) in Candidates(sheet, 0))
        {
            var feet = candidate.Strokes.Where(s => s.IsPedal).Select(s => s.Note.Midi).ToArray();
            var hands = candidate.Strokes.Where(s => !s.IsPedal).Select(s => s.Note.Midi).ToArray();
            var gap = feet.Length > 0 && hands.Length > 0 ? hands.Min() - feet.Max() : 0;
            var wide = Math.Max(0, gap - (12 + 7)) + Math.Max(0, gap - (12 + 12));
            beyond.Add(wide);
            Assert.Equal((int)Math.Round(1000 * Sound.Gap * wide), sheet.Prices.TermsAlone(0, number)[Term.Gap]);
        }

        Assert.Superset(new SortedSet<int> { 0, 1, 2, 5, 11 }, beyond);
    }

    // A semitone and a whole tone are steps, a minor third is none (common practice). The basses are those of the chords' thirds
    // and roots on a tower with pedals C3 D3 D#3.
    [Fact]
    public void Another_bass_costs_less_where_it_is_reached_by_a_semitone_or_a_whole_tone()
    {
        var sheet = SmallSheets.Priced(SmallSheets.Sheet(["Cm", "Bb", "Cm"]), SmallSheets.TowerOf("Slipway, low steps", 48, 50, 51, 58, 60, 62, 63, 65, 67), Sound);
        var steps = new SortedSet<int>();
        foreach (var before in OneForEachBass(sheet, 0))
        {
            foreach (var after in OneForEachBass(sheet, 1))
            {
                int[] choice = [before, after, 0];
                var size = Math.Abs(Bass(sheet, 0, before) - Bass(sheet, 1, after));
                steps.Add(size);
                var slow = new StrokeByStroke(sheet, choice).Bass();
                var terms = Enumerable.Range(0, 3).Select(s => (Alone: sheet.Prices.TermsAlone(s, choice[s]), Others: sheet.Prices.WithOthers(choice, s, choice[s]))).ToArray();
                Assert.Equal(slow, terms.Sum(t => (long)t.Alone[Term.Bass] + t.Alone[Term.BassLine] + t.Others[Term.Bass] + t.Others[Term.BassLine]) / 2);
            }
        }

        Assert.Superset(new SortedSet<int> { 1, 2 }, steps);
    }

    private static int Bass(PricedSheet sheet, int slot, int number) => sheet.Candidates[slot][number].Voicing.Bass!.Value.Midi;

    private static int[] OneForEachBass(PricedSheet sheet, int slot) =>
    [
        .. Candidates(sheet, slot)
            .Where(c => c.Candidate is { Figure: Figure.Together, Voicing: { Bass: not null, SecondPedal: null } })
            .DistinctBy(c => c.Candidate.Voicing.Bass)
            .Select(c => c.Number),
    ];

    private static IEnumerable<(Candidate Candidate, int Number)> Candidates(PricedSheet sheet, int slot) =>
        sheet.Candidates[slot].Select((candidate, number) => (candidate, number));
}
