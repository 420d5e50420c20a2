using FsCheck.Xunit;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Tests.Playing;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

public sealed class CandidateSearchTests
{
    [Law(MaxTest = 12, Arbitrary = [typeof(SheetGens)])]
    public void Every_candidate_can_be_played_and_sounds_the_chord(SlotToPlay given)
    {
        var (tower, slot) = (given.Tower, given.Slot);
        var rollStep = new Seconds(given.RollStep / 1000.0);
        var candidates = List(tower, slot, rollStep);
        var checker = new Checker(tower);
        foreach (var candidate in candidates)
        {
            Assert.Empty(checker.Check(Timed(slot, candidate, rollStep)));
            Assert.All(candidate.Strokes, s => Assert.True(slot.Symbol.PitchClasses.Contains(s.Note.PitchClass)));
            Assert.Equal(candidate.Strokes.Select(s => s.Note).Distinct().Order(), candidate.Voicing.Notes.Order());
            Assert.All(candidate.Strokes, s => Assert.True(s.After >= Beats.Zero && s.After < slot.Length && s.LeadSteps >= 0));
        }
    }

    [Law(MaxTest = 30, Arbitrary = [typeof(SheetGens)])]
    public void No_strokes_are_listed_twice_and_silence_stands_last(SlotToPlay given)
    {
        var candidates = List(given.Tower, given.Slot, new Seconds(given.RollStep / 1000.0));

        Assert.Equal(candidates.Count, candidates.Select(c => c.Strokes).Distinct().Count());
        Assert.Equal((Figure.Silent, 0), (candidates[^1].Figure, candidates[^1].Strokes.Count));
        Assert.Null(candidates[^1].Lowest);
        Assert.DoesNotContain(candidates.SkipLast(1), c => c.Figure == Figure.Silent || c.Strokes.Count == 0);
    }

    [Law(MaxTest = 12, Arbitrary = [typeof(SheetGens)])]
    public void A_tower_with_narrower_limits_is_obeyed(SlotToPlay given)
    {
        LimitOverride[] narrow =
        [
            new("hand_keys_at_once", 1, null),
            new("hands_apart", 12, null),
            new("feet_apart", 9, null),
            new("bells_at_once", 3, null),
            new("at_once_s", 0.05, null),
        ];
        var tower = given.Tower with { Limits = narrow.ToItems() };
        var rollStep = new Seconds(given.RollStep / 1000.0);
        var checker = new Checker(tower);

        Assert.All(List(tower, given.Slot, rollStep), c => Assert.Empty(checker.Check(Timed(given.Slot, c, rollStep))));
    }

    [Theory]
    [InlineData("C", 60)]
    [InlineData("Am", 180)]
    [InlineData("Em7", 180)]
    [InlineData("Am/E", 180)]
    [InlineData("C", 280)]
    [InlineData("G7", 60)]
    [InlineData("Am7", 60)]
    [InlineData("Dm/F", 60)]
    [InlineData("C/D", 100)]
    [InlineData("Gsus4", 60)]
    [InlineData("F6", 60)]
    [InlineData("D5", 60)]
    [InlineData("Bm7b5", 280)]
    public void Nothing_that_can_be_struck_together_is_left_out(string symbol, int tempo)
    {
        var tower = NineBells.Tower;
        var slot = Sheets.Plan("4/4", tempo, $"| C | {symbol} | F | C |").Slots[1];

        var listed = List(tower, slot, new Seconds(0.06)).Where(c => c.Figure == Figure.Together).Select(c => NineBells.Text(c.Strokes));

        Assert.Equal(NineBells.Together(slot).Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    private static Items<Candidate> List(Tower tower, Slot slot, Seconds rollStep) =>
        new CandidateSearch(tower, new Reach(PlayingLimits.For(tower), tower.Transposition), rollStep).List(slot);

    // A second in, so that a roll's lead does not begin before the piece.
    private static IEnumerable<Stroke> Timed(Slot slot, Candidate candidate, Seconds rollStep)
    {
        var quarter = slot.Duration * (1 / slot.Length.Quarters);
        return candidate.Strokes.Select(s =>
            Strokes.Of(s.Note, s.Limb, new Seconds(1) + (quarter * s.After.Quarters) - (rollStep * s.LeadSteps)));
    }
}
