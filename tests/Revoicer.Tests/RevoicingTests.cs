using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
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

    public static TheoryData<string> ChordDemos => [.. RepositoryFiles.All("leadsheets-demo", "*.chords")];

    public static TheoryData<string> TuneDemos => [.. RepositoryFiles.All("leadsheets-demo", "*.abc")];

    public static TheoryData<string> Demos => [.. ChordDemos, .. TuneDemos];

    public static TheoryData<string, string> DemosOnTowers =>
        [.. RepositoryFiles.All("leadsheets-demo", "*.chords").SelectMany(_ => ShippedTowers.Names, (file, tower) => (file, tower))];

    [Theory]
    [MemberData(nameof(Demos))]
    public void A_demo_clashes_at_most_six_tenths_of_two_thoughtless_ways_and_is_nearly_as_full(string file)
    {
        var made = DemoDrafts.Of(file);
        var totals = made.Totals;
        Assert.Empty(new Checker(ShippedTowers.Default).Check(made.Strokes));
        Assert.InRange(totals.ClashDose / totals.CloseRootDose, 0.01, 0.6);
        Assert.InRange(totals.ClashDose / totals.PlainHandDose, 0.01, 0.6);
        Assert.InRange(made.Strokes.Count(s => !s.IsTune) / (double)totals.PlainHandStrokes, 0.75, 2);
        Assert.InRange(totals.RootLowest, 0.70, 1);
        Assert.InRange(Share(made.Choices.Where(IsRoomy), c => c.Strokes.Count >= 2), 0.60, 1);
        Assert.InRange(Share(made.Choices.Where(IsStrong), c => c.Strokes.Any(s => s.IsPedal)), 0.80, 1);
        Assert.Null(made.Choices[0].SoundingBass);
        Assert.Null(made.Choices[^1].SoundingBass);

        bool IsRoomy(Choice c) => (made.Tempi.At(c.Start + c.Length) - made.Tempi.At(c.Start)).Value >= 1;

        bool IsStrong(Choice c) => c.Beat == 1 && IsRoomy(c);
    }

    [Theory]
    [MemberData(nameof(ChordDemos))]
    public void Nearly_every_chord_without_a_tune_has_three_bells(string file)
    {
        var made = DemoDrafts.Of(file);
        Assert.InRange(Share(made.Choices, c => Bells(c) >= 3), 0.90, 1);
    }

    [Theory]
    [MemberData(nameof(TuneDemos))]
    public void A_tune_is_played_whole_on_top_and_louder(string file)
    {
        var sheet = Read(file, File.ReadAllText(file));
        var made = DemoDrafts.Of(file);
        var heard = HeardTune.Of(sheet);
        var tune = made.Strokes.Where(s => s.IsTune).ToArray();
        Assert.Equal(heard.Select(n => (n.Start, n.Note.Midi + (12 * made.TuneOctaves!.Value))), tune.Select(s => (s.Beat, s.Note.Midi)));
        Assert.All(tune, s => Assert.True(s.Level.Value > 0));

        // At least a minor third below the tune that sounds with it (common practice).
        foreach (var stroke in made.Strokes.Where(s => !s.IsTune))
        {
            var at = stroke.At - made.Shift;
            var over = heard.Where(n => made.Tempi.At(n.Start).Value <= at.Value + 1e-6 && made.Tempi.At(n.End).Value > at.Value + 1e-6);
            Assert.All(over, n => Assert.True(stroke.Note.Midi + 3 <= n.Note.Midi + (12 * made.TuneOctaves!.Value)));
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void The_price_and_the_report_are_one_figure(string file)
    {
        // Each pair of strokes is priced once; between slots it stands with both of them, hence the half. (No demo repeats a
        // bar so soon that a slot rings into its own next hearing, which would stand once only.)
        var made = DemoDrafts.Of(file);
        var once = made.Choices.DistinctBy(c => (c.Bar, c.Beat)).ToArray();
        var priced = once.Sum(c => Price(c, Term.OwnRoughness) + Price(c, Term.Contradiction) + Price(c, Term.WithTune) + (Price(c, Term.Ringing) / 2));
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
    [MemberData(nameof(ChordDemos))]
    public void Bright_is_lighter_and_full_is_heavier_than_balanced(string file)
    {
        // What the two directions mean (docs/sounds.md), on the tower for which they were first set.
        Arrangement[] made = [.. new[] { "bright", "balanced", "full" }.Select(sound => DemoDrafts.Of(file, sound))];
        double[] doses = [.. made.Select(m => m.Totals.ClashDose)];
        double[] heights = [.. made.Select(m => m.Strokes.Average(s => s.Note.Midi))];
        int[] pedals = [.. made.Select(m => m.Strokes.Count(s => s.IsPedal))];
        Assert.True(doses[0] < doses[1] && doses[1] < doses[2], string.Join(" < ", doses));
        Assert.True(heights[0] > heights[1] && heights[1] > heights[2], string.Join(" > ", heights));
        Assert.True(pedals[0] < pedals[1] && pedals[1] <= pedals[2], string.Join(" < ", pedals));
    }

    [Theory]
    [InlineData("C3", "C5", "C4")]
    [InlineData("C4", "C4", "C4")]
    [InlineData("C4", "D4", "C4")]
    public void A_tower_that_lacks_the_bells_of_a_chord_still_gets_an_answer_and_no_yardstick(string lowest, string highest, string pedal)
    {
        var within = Enumerable.Range(49, 23).Select(WrittenNote.AtMidi).Select(n => $"\"{n}\"");
        var missing = lowest == "C3" ? $"[{string.Join(", ", within)}]" : "[]";
        var file = $"name = \"Merrowhaven Fog Bell\"\nlowest = \"{lowest}\"\nhighest = \"{highest}\"\nmissing = {missing}\npedals = [\"{lowest}\", \"{pedal}\"]\nsounds = 12\n";
        var tower = Assert.IsType<Reading<Tower>.Accepted>(TowerFile.Read("fog-bell.toml", file)).Value;
        var made = Draft(Read("two-buoys.chords", TwoBuoys), tower, ShippedSounds.Default);
        Assert.Equal((0, 0, 0), (made.Totals.PlainHandDose, made.Totals.PlainHandStrokes, made.Totals.CloseRootDose));
        Assert.DoesNotContain("Against", RationaleText.Of(made), StringComparison.Ordinal);
    }

    [Fact]
    public void The_recovery_that_a_tower_asks_for_holds_between_tune_and_chords_too()
    {
        // The tune leaves bells behind that chords could use; 3 s later they may.
        const string Limits = "recovery_below_48_s = { hard = 3 }\nrecovery_48_59_s = { hard = 3 }\nrecovery_60_71_s = { hard = 3 }\nrecovery_72_83_s = { hard = 3 }\n";
        var tower = Assert.IsType<Reading<Tower>.Accepted>(TowerFile.Read("slow.toml", ShippedTowers.Text("harbour-47") + "\n[limits]\n" + Limits)).Value;
        var sheet = Read("slow.abc", "X:1\nM:4/4\nL:1/4\nQ:1/4=130\nK:C\n\"C\"GCEC|\"C\"g4|\"G7\"DFBD|\"G7\"g4|\"C\"EGCE|\"C\"c'4|]\n");
        var made = Draft(sheet, tower, ShippedSounds.Default);
        Assert.All(new Checker(tower).Check(made.Strokes), b => Assert.True(b.InTune));
    }

    [Fact]
    public void A_chord_shorter_than_the_roll_into_the_next_still_has_its_figure()
    {
        // 0.18 s and no stroke of the tune; a roll of four bells leads by as much into the last chord.
        var sheet = Read("gust.abc", "X:1\nM:2/2\nL:1/4\nQ:1/2=84\nK:Gm\n\"G7b9\"^G,9/4\"Fmaj7\"z/\"Ebm6\"(3cdef4|\n");
        var made = Draft(sheet);
        Assert.All(made.Choices, c => Assert.True(double.IsFinite(c.Clash.Whole) && c.Clash.Whole >= 0));
    }

    [Fact]
    public void One_tempo_for_the_whole_is_told_where_the_sheet_has_several()
    {
        var sheet = Read("squall.abc", "X:1\nM:4/4\nL:1/4\nQ:1/4=100\nK:C\n\"C\"CEGc|[Q:1/4=60]\"G\"B4|\"C\"c4|]\n");
        Assert.Empty(Assert.IsType<Drafting.Made>(Draft(sheet, null)).Arrangement.Totals.LeftOut);
        var steady = Assert.IsType<Drafting.Made>(Draft(sheet, new Tempo(Beats.OfQuarters(1), 90))).Arrangement;
        Assert.Equal("the sheet's changes of speed are left out, as one tempo was asked for", Assert.Single(steady.Totals.LeftOut));
    }

    [Fact]
    public void What_still_rings_is_told_of_the_chords_where_there_is_a_tune()
    {
        var made = Draft(Read("buoy.abc", "X:1\nM:4/4\nL:1/4\nQ:1/4=100\nK:C\n\"C\"cegc'|\"G7\"b2 g2|\"C\"c'4|]\n"));
        Assert.Contains("Still ringing when it begins, the tune aside: ", RationaleText.Of(made), StringComparison.Ordinal);
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

    private static double Share(IEnumerable<Choice> choices, Func<Choice, bool> holds)
    {
        var all = choices.ToArray();
        return all.Count(holds) / (double)all.Length;
    }

    internal static LeadSheet Read(string name, string text)
    {
        var reading = name.EndsWith(".abc", StringComparison.Ordinal)
            ? AbcReader.Read(Path.GetFileName(name), text, SheetChoice.First)
            : ChordGridReader.Read(Path.GetFileName(name), text);
        return Assert.IsType<Reading<LeadSheet>.Accepted>(reading).Value;
    }

    private static Arrangement Draft(LeadSheet sheet) => Assert.IsType<Drafting.Made>(Draft(sheet, null)).Arrangement;

    private static Arrangement Draft(LeadSheet sheet, Tower tower, Sound sound) =>
        Assert.IsType<Drafting.Made>(Revoicing.Draft(sheet, tower, sound, DraftWish.None, null, CancellationToken.None)).Arrangement;

    private static Drafting Draft(LeadSheet sheet, Tempo? tempo) =>
        Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, new DraftWish(tempo), null, CancellationToken.None);
}
