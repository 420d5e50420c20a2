using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.Harmony;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Tests.Prices;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests;

public class RevoicingManyHearingsTests
{
    // Two chords in turn that no limb can take from the same bell; what cannot be is dear once for every time it is heard.
    [Fact]
    public void What_cannot_follow_stays_forbidden_however_often_it_is_heard()
    {
        var sheet = SmallSheets.Sheet(["C G C G"], [.. Enumerable.Repeat(0, 300)]) with { Tempo = null };
        var priced = SmallSheets.Priced(sheet, ShippedTowers.Default, ShippedSounds.Default, 150);
        var prices = priced.Prices;

        Assert.All(Enumerable.Range(0, prices.Count), slot =>
        {
            Assert.All(prices.Alone(slot).ToArray(), price => Assert.InRange(price, 0, long.MaxValue));
            Assert.All(prices.Linked(slot).Where(o => o > slot), other =>
            {
                int[] all = [.. Enumerable.Range(0, prices.Candidates(other).Count)];
                var pairs = new long[all.Length];
                foreach (var candidate in Enumerable.Range(0, prices.Candidates(slot).Count))
                {
                    prices.PairPrices(slot, candidate, other, all, pairs);
                    Assert.True(pairs.All(p => p >= 0), $"slot {slot}, candidate {candidate}: {pairs.Min()}");
                }
            });
        });
    }

    // A hymn of the corpus whose low chords, moved with the tune, follow too quickly on those that were chosen.
    [Fact]
    public void What_no_limb_has_time_for_is_told_as_that_and_not_as_a_price()
    {
        var lines = SharedFiles.LinesOrSkip("corpora", "hymns", "Amazing_Grace-New_Britain.abc");
        var passage = Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage("hymn.abc", string.Join('\n', lines), SheetChoice.First)).Value;
        var revoicing = PassageRevoicing.Of(passage, null)!;
        var made = Assert.IsType<Drafting.Made>(Revoicing.Draft(
            revoicing.Sheet, ShippedTowers.Default, ShippedSounds.Default, revoicing.Close(DraftWish.None, 0), null, TestContext.Current.CancellationToken)).Arrangement;
        var former = made.Choices.Select(c => c.Former!).ToArray();

        Assert.Contains(former, f => f is { CostsMore: null, IsKept: false, Obstacle.Kind: ObstacleKind.NoTime });
        Assert.All(former, f => Assert.DoesNotContain(f.Differences, d => Math.Abs(d.Thousandths) >= Thousandths.Forbidden));
    }
}
