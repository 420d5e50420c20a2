using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests;

public class RevoicingTests
{
    private const string TwoBuoys = """
        title: Two Buoys
        key: C
        time: 3/4
        tempo: 96
        | C | Dm7/C | G7 | C ||
        """;

    public static TheoryData<string> Demos => [.. RepositoryFiles.All("leadsheets-demo", "*.chords")];

    public static TheoryData<string, string> DemosOnTowers =>
        [.. RepositoryFiles.All("leadsheets-demo", "*.chords").SelectMany(_ => ShippedTowers.Names, (file, tower) => (file, tower))];

    [Theory]
    [MemberData(nameof(Demos))]
    public void A_demo_is_arranged_with_its_basses_and_full_chords(string file)
    {
        var made = Draft(Read(file, File.ReadAllText(file)));
        Assert.Empty(new Checker(ShippedTowers.Default).Check(made.Strokes));
        Assert.InRange(made.Totals.RootLowest, 0.70, 1);
        Assert.InRange(made.Choices.Count(c => Bells(c) >= 3) / (double)made.Choices.Count, 0.90, 1);
        Assert.Null(made.Choices[0].SoundingBass);
        Assert.Null(made.Choices[^1].SoundingBass);
        Assert.InRange(made.Totals.MedianClash, 1, 50);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void The_price_and_the_report_are_one_figure(string file)
    {
        // Each pair of strokes is priced once; between slots it stands with both of them, hence the half. (No demo repeats a
        // bar so soon that a slot rings into its own next hearing, which would stand once only.)
        var made = Draft(Read(file, File.ReadAllText(file)));
        var once = made.Choices.DistinctBy(c => (c.Bar, c.Beat)).ToArray();
        var priced = once.Sum(c => Price(c, Term.OwnRoughness) + Price(c, Term.Contradiction) + (Price(c, Term.Ringing) / 2));
        Assert.Equal(made.Totals.ClashDose, priced / 1000, 0.002 * made.Totals.ClashDose);
        Assert.Equal(made.Totals.ClashDose, made.Choices.Sum(c => c.Dose), 9);
    }

    [Fact]
    public void Two_runs_give_the_same_arrangement()
    {
        var sheet = Read("two-buoys.chords", TwoBuoys);
        Assert.Equal(Draft(sheet), Draft(sheet));
    }

    [Fact]
    public void The_reasons_of_a_small_sheet_read_well() =>
        Expected.Text("two-buoys", RationaleText.Of(Draft(Read("two-buoys.chords", TwoBuoys))));

    [Fact]
    public void A_tempo_at_which_nothing_can_move_still_gets_an_answer_or_a_reason()
    {
        var sheet = Read("hasty.chords", "title: Hasty\nkey: C\ntime: 4/4\n| C G7 / C | F C G7 C | Am E7 F C | G7 / C / ||\n");
        foreach (var perMinute in new[] { 120, 200, 300 })
        {
            var drafting = Draft(sheet, new Tempo(Beats.OfQuarters(1), perMinute));
            var made = Assert.IsType<Drafting.Made>(drafting);
            Assert.Empty(new Checker(ShippedTowers.Default).Check(made.Arrangement.Strokes));
        }
    }

    [Theory]
    [MemberData(nameof(DemosOnTowers))]
    public void A_demo_can_be_played_on_every_shipped_tower(string file, string name)
    {
        var tower = ShippedTowers.Named(name);
        var made = Draft(Read(file, File.ReadAllText(file)), tower, ShippedSounds.Default);
        Assert.Empty(new Checker(tower).Check(made.Strokes));
        Assert.InRange(made.Totals.RootLowest, 0.70, 1);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Bright_is_lighter_and_full_is_heavier_than_balanced(string file)
    {
        // What the two directions mean (docs/sounds.md), on the tower for which they were first set.
        var sheet = Read(file, File.ReadAllText(file));
        Arrangement[] made = [.. new[] { "bright", "balanced", "full" }.Select(s => Draft(sheet, ShippedTowers.Default, ShippedSounds.Named(s)))];
        double[] doses = [.. made.Select(m => m.Totals.ClashDose)];
        double[] heights = [.. made.Select(m => m.Strokes.Average(s => s.Note.Midi))];
        int[] pedals = [.. made.Select(m => m.Strokes.Count(s => s.IsPedal))];
        Assert.True(doses[0] < doses[1] && doses[1] < doses[2], string.Join(" < ", doses));
        Assert.True(heights[0] > heights[1] && heights[1] > heights[2], string.Join(" > ", heights));
        Assert.True(pedals[0] < pedals[1] && pedals[1] < pedals[2], string.Join(" < ", pedals));
    }

    [Fact]
    public void Work_that_is_stopped_ends_with_an_exception_and_no_arrangement()
    {
        var sheet = Read("two-buoys.chords", TwoBuoys);
        Assert.ThrowsAny<OperationCanceledException>(() =>
            Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, DraftWish.None, null, new CancellationToken(canceled: true)));
    }

    private static double Price(Choice choice, Term term) =>
        choice.Terms.Where(t => t.Term == TermNames.Of(term)).Sum(t => t.Thousandths);

    private static int Bells(Choice choice) => choice.Strokes.Select(s => s.Note).Distinct().Count();

    private static LeadSheet Read(string name, string text) =>
        Assert.IsType<Reading<LeadSheet>.Accepted>(ChordGridReader.Read(Path.GetFileName(name), text)).Value;

    private static Arrangement Draft(LeadSheet sheet) => Assert.IsType<Drafting.Made>(Draft(sheet, null)).Arrangement;

    private static Arrangement Draft(LeadSheet sheet, Tower tower, Sound sound) =>
        Assert.IsType<Drafting.Made>(Revoicing.Draft(sheet, tower, sound, DraftWish.None, null, CancellationToken.None)).Arrangement;

    private static Drafting Draft(LeadSheet sheet, Tempo? tempo) =>
        Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, new DraftWish(tempo), null, CancellationToken.None);
}
