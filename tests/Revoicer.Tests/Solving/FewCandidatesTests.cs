using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Solving.Windows;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Solving;

public class FewCandidatesTests
{
    private const string Sheet = "title: Slack Tide\nkey: C\ntime: 4/4\ntempo: 90\n| C G/B | F | Am Dm7 | G7 |]\n";

    [Theory]
    [InlineData(-100)]
    [InlineData(3)]
    public void Of_many_a_few_are_left_with_which_every_rule_can_be_kept_that_could_be_kept_with_all(double carry)
    {
        var sound = ShippedSounds.Default with { CarryAtLeast = new Decibels(carry) };
        var instrument = new Instrument(ShippedTowers.Default, sound);
        var sheet = RevoicingTests.Read("slack-tide.chords", Sheet);
        var plan = SlotCutting.Cut(sheet, SheetTempi.Of(sheet));
        var listing = new CandidateSearch(instrument.Tower, instrument.Reach, sound.RollStep);
        var rules = SoundRules.Of(sound);
        var cancel = TestContext.Current.CancellationToken;
        var all = SheetPrices.Of(instrument, sound, plan, [.. plan.Slots.Select(listing.List)], cancel);
        var book = RuleBook.For(rules, all);
        var few = new FewCandidates(new SlotPricing(instrument, sound, plan), listing.List, rules);
        Assert.All(plan.Slots, slot =>
        {
            int[] left = [.. few.Of(slot).Select(c => all.Candidates(slot.Index).ToList().IndexOf(c))];
            var allowed = book.Allowed[slot.Index];
            var alone = all.Alone(slot.Index).ToArray();
            Assert.InRange(left.Length, 1, 150);
            Assert.Equal(left.Order(), left);
            Assert.All(left, c => Assert.Contains(c, allowed));
            Assert.Contains(allowed.MinBy(c => alone[c]), left);
            Assert.All(book.Counters.All, count => Assert.Equal(allowed.Min(c => count.Counts[slot.Index][c]), left.Min(c => count.Counts[slot.Index][c])));
            Assert.Equal(alone.Min(), few.Least(slot.Index, 1));
        });
    }
}
