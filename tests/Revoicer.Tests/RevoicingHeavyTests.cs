using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests;

public class RevoicingHeavyTests
{
    private const string Waltz = "leadsheets-demo/ferry-waltz.chords";
    private const double Most = 4;

    // The waltz in a full sound wants more heavy bells than this tower's player gives.
    [Fact]
    public void A_player_who_gives_fewer_heavy_strokes_gets_fewer_and_pays_for_it()
    {
        var (free, held) = (DemoDrafts.Of("ferry-waltz.chords", "full"), Drafted(WithMost(Most)));

        Assert.True(HeaviestPhrase(free) > Most, $"{HeaviestPhrase(free)} heavy strokes in 10 s");
        Assert.InRange(HeaviestPhrase(held), 0, Most + 0.5);
        Assert.True(held.Totals.Price > free.Totals.Price);
    }

    private static Tower WithMost(double strokes) => ShippedTowers.Default with
    {
        Limits = [new LimitOverride("heavy_strokes_in_10_s", strokes, strokes / 2)],
    };

    // Four bars of the waltz are a phrase; a stroke more or less is what a phrase's end cuts off.
    private static double HeaviestPhrase(Arrangement made)
    {
        var phrase = made.Tempi.At(made.Bars[5].Start) - made.Tempi.At(made.Bars[1].Start);
        return Enumerable.Range(0, (made.Bars.Count - 1) / 4)
            .Max(i => made.Choices.Where(c => c.Start >= made.Bars[1 + (4 * i)].Start && (5 + (4 * i) >= made.Bars.Count || c.Start < made.Bars[5 + (4 * i)].Start))
                .Sum(c => c.Strokes.Count(s => s.Note.Midi < 60))) * 10 / phrase.Value;
    }

    private static Arrangement Drafted(Tower tower) => Assert.IsType<Drafting.Made>(Drafting(tower)).Arrangement;

    private static Drafting Drafting(Tower tower) => Revoicing.Draft(
        Assert.IsType<Reading<LeadSheet>.Accepted>(ChordGridReader.Read(Waltz, RepositoryFiles.Text("leadsheets-demo", "ferry-waltz.chords"))).Value,
        tower,
        ShippedSounds.Named("full"),
        DraftWish.None,
        null,
        TestContext.Current.CancellationToken);
}
