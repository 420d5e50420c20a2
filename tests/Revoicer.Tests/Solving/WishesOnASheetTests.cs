using Revoicer.Music;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Tests.Oracles;
using Revoicer.Tests.Prices;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>Wishes on a tower of eight bells, where every choice can be looked at.</summary>
public sealed class WishesOnASheetTests
{
    private static readonly PricedSheet Sheet = SmallSheets.Priced(SmallSheets.Sheet(["C", "G7", "C"]), SmallSheets.EightBells, ShippedSounds.Default);

    private static readonly PricedSheet Quick = SmallSheets.Priced(
        SmallSheets.Sheet(["C C/G F/C G7", "C"]), SmallSheets.EightBells, ShippedSounds.Default, quarters: 150);

    public static TheoryData<string, int> Pins => new()
    {
        { "[[pin]]; bar = 2; bass = \"G3\"", 1 },
        { "[[ban]]; bar = 2; bass = \"G3\"", 1 },
        { "[[pin]]; bar = 2; lowest = \"third\"", 1 },
        { "[[pin]]; bar = 2; figure = \"broken\"", 1 },
        { "[[leave-alone]]; from = 2; to = 2", 1 },
        { "[[pin]]; bar = 3; bells = [\"C3\", \"G4\", \"E4\"]", 2 },
        { "[[pin]]; bar = 1; left-hand-top = \"none\"", 0 },
    };

    // What a wish allows is held to the strokes by WishRuleTests; here the search is held to the cheapest that is left.
    [Theory]
    [MemberData(nameof(Pins))]
    public void The_answer_is_the_cheapest_of_all_choices_that_keep_wish_and_rules(string wish, int slot)
    {
        var rules = SoundRules.Of(Sheet.Sound);
        var pin = Assert.IsType<WishRule>(Assert.Single(Wished.Rules(wish)));
        var book = RuleBook.For([pin, .. rules], Sheet.Prices);
        var found = Found(Sheet.Prices, [pin, .. rules]);

        Assert.True(pin.Allows(Sheet.Plan.Slots[slot], Sheet.Candidates[slot][found.Choice[slot]]));
        Assert.Equal(Least(Sheet.Prices, book, choice => pin.Allows(Sheet.Plan.Slots[slot], Sheet.Candidates[slot][choice[slot]])), found.Price);
        Assert.InRange(found.Bound, 1, found.Price);
    }

    [Fact]
    public void Another_answer_is_the_cheapest_with_other_bells_in_as_many_chords_as_are_asked_for()
    {
        var rules = SoundRules.Of(Sheet.Sound);
        var book = RuleBook.For(rules, Sheet.Prices);
        var answers = new List<Outcome.Found> { Found(Sheet.Prices, rules) };
        for (var number = 1; number <= 4; number++)
        {
            var next = Found(Sheet.Prices, [.. rules, .. OtherAnswers.Rules(Sheet.Prices, answers)]);

            Assert.Equal(Least(Sheet.Prices, book, choice => answers.All(a => Differing(Sheet, a.Choice, choice) >= 1)), next.Price);
            Assert.All(answers, a => Assert.True(Differing(Sheet, a.Choice, next.Choice) >= 1 && OtherAnswers.Differing(Sheet.Prices, a, next) >= 1));
            answers.Add(next);
        }

        // A quarter of the chords, the last part of four counted whole.
        Assert.Equal([1, 1, 2, 9, 10], new[] { 1, 4, 5, 36, 37 }.Select(OtherAnswers.LeastOf));
    }

    [Fact]
    public void What_is_heard_again_is_the_cheapest_that_differs_while_the_first_time_stays()
    {
        var sheet = SmallSheets.Sheet(["C", "G7", "C"], [0, 1, 0, 1, 2]);
        var tempi = TempoMap.Steady(new Tempo(Beats.OfQuarters(1), 90));
        var alike = SmallSheets.Priced(sheet, SmallSheets.EightBells, ShippedSounds.Default);
        var apart = SmallSheets.Priced(SlotCutting.Cut(sheet, tempi, wish: new CutWish([], PassesApart: true)), SmallSheets.EightBells, ShippedSounds.Default);
        var rules = SoundRules.Of(alike.Sound);
        var first = Found(alike.Prices, rules);

        var besides = SecondTimes.Rules(alike.Prices, first, apart.Plan);
        var found = Found(apart.Prices, [.. besides, .. rules]);

        Assert.Equal("1 1, 2 1, 1 2, 2 2, 3 1", string.Join(", ", apart.Plan.Slots.Select(s => $"{s.Bar} {s.Hearings[0].Pass}")));
        Assert.Equal("in bars 1 to 2, the second time, at least one chord strikes other bells than the first time", besides[1].Words);
        Items<SlotStroke>[] before = [.. Enumerable.Range(0, 2).Select(s => alike.Candidates[s][first.Choice[s]].Strokes)];
        Assert.Equal(before, Enumerable.Range(0, 2).Select(s => apart.Candidates[s][found.Choice[s]].Strokes));
        Assert.Equal(Least(apart.Prices, RuleBook.For([besides[0], .. rules], apart.Prices), IsOther), found.Price);

        bool IsOther(IReadOnlyList<int> choice) => Enumerable.Range(0, 2).Any(s => !Bells(before[s]).SetEquals(Bells(apart.Candidates[s + 2][choice[s + 2]].Strokes)));
    }

    [Fact]
    public void Where_nothing_is_heard_twice_nothing_varies() =>
        Assert.Empty(SecondTimes.Rules(Sheet.Prices, Found(Sheet.Prices, []), Sheet.Plan));

    // The last of each is possible for itself; EightBells has C3 G3 C4 on its pedals.
    [Theory]
    [InlineData("[[pin]]; bar = 2; bass = \"D3\"; [[pin]]; bar = 2; lowest = \"third\"", "2: the bass on D3")]
    [InlineData("[[pin]]; bar = 1; bass = \"C3\"; figure = \"broken\"; [[ban]]; bar = 1; bell = \"C3\"; [[no-rolls]]; from = 1; to = 3", "1: the bass on C3|1: not C3 among the bells")]
    [InlineData("[[pin]]; bar = 1; bells = [\"C3\", \"E4\", \"G4\"]; [[ban]]; bar = 1; figure = \"together\"; [[ban]]; bar = 1; figure = \"rolled\"; [[ban]]; bar = 1; figure = \"bass first\"; [[ban]]; bar = 1; figure = \"broken\"; [[ban]]; bar = 1; figure = \"afterbeats\"", "1: the bells C3 E4 G4 and no others|1: not the figure 'together'|1: no rolls|1: not the figure 'bass first'|1: not the figure 'broken'|1: not the figure 'afterbeats'")]
    public void Wishes_that_leave_a_chord_nothing_are_told_and_none_too_many(string wishes, string told)
    {
        var conflict = Assert.Single(Impossible(Sheet.Prices, [.. Wished.Rules(wishes), .. SoundRules.Of(Sheet.Sound)]).Conflicts);

        Assert.Equal(told.Split('|').Select(w => "bar " + w), conflict.Rules.Cast<WishRule>().Select(r => r.Wish.Words));
        Assert.All(conflict.Rules, rule => Found(Sheet.Prices, [.. conflict.Rules.Where(r => r != rule)]));
    }

    [Fact]
    public void Wishes_that_feet_have_no_time_for_are_told_with_that()
    {
        // C3 needs 0.5 s to recover (playing-limits.tsv, recovery_48_59_s) and is given 0.4 s.
        var wishes = Wished.Rules("[[pin]]; bar = 1; beat = 1; bass = \"C3\"; [[pin]]; bar = 1; beat = 2; bass = \"C3\"; [[pin]]; bar = 1; beat = 4; bass = \"G3\"");
        var conflict = Assert.Single(Impossible(Quick.Prices, [.. wishes, .. SoundRules.Of(Quick.Sound)]).Conflicts);

        Assert.Null(conflict.Slot);
        Assert.Equal(
            ["your wish for bar 1 beat 1: the bass on C3", "your wish for bar 1 beat 2: the bass on C3", "hands and feet have time to move from chord to chord, and bells to recover"],
            conflict.Rules.Select(r => r.Words));
        Assert.All(conflict.Rules.OfType<WishRule>(), rule => Found(Quick.Prices, [.. conflict.Rules.Where(r => r != rule)]));
    }

    [Fact]
    public void Other_bells_cannot_be_had_where_all_are_pinned()
    {
        Items<Rule> rules = [.. Wished.Rules("[[leave-alone]]; from = 1; to = 3"), .. SoundRules.Of(Sheet.Sound)];
        var first = Found(Sheet.Prices, rules);
        var conflict = Assert.Single(Impossible(Sheet.Prices, [.. rules, .. OtherAnswers.Rules(Sheet.Prices, [first])]).Conflicts);

        Assert.Equal(
            ["your wish for bars 1 to 3: no accompaniment", "at least 1 of 3 chords strike other bells than in the first answer"],
            conflict.Rules.Select(r => r.Words));
    }

    [Fact]
    public void A_rule_of_the_program_gives_way_to_a_wish_and_that_is_told()
    {
        var found = Found(Sheet.Prices, [.. Wished.Rules("[[leave-alone]]; from = 3; to = 3"), .. SoundRules.Of(Sheet.Sound)]);

        Assert.Equal(
            [
                "bar 3 beat 1, C: no voicing that your wishes leave keeps that first chord, last chord, cadences and slash chords have the root or slash bass in the lowest bell, so it was lifted there",
                "phrase from bar 1 beat 1: no voicing that your wishes leave keeps that new chords on strong beats have a bass bell in 80 % of the places of a phrase, so one exception is allowed there",
            ],
            found.Lifted);
    }

    private static long Least(SheetPrices prices, RuleBook book, Func<IReadOnlyList<int>, bool> isKept)
    {
        var table = TablePrices.Copy(prices, book.Allowed);
        int[][] all = [.. book.Allowed.Select(slot => Enumerable.Range(0, slot.Length).ToArray())];
        int[] Numbers(int[] places) => [.. places.Select((place, slot) => book.Allowed[slot][place])];
        return BruteForce.Least(all, places => book.Counters.AreKept(Numbers(places)) && isKept(Numbers(places)), table.Price)!.Value;
    }

    private static int Differing(PricedSheet sheet, IReadOnlyList<int> a, IReadOnlyList<int> b) => Enumerable.Range(0, a.Count)
        .Count(s => !Bells(sheet.Candidates[s][a[s]].Strokes).SetEquals(Bells(sheet.Candidates[s][b[s]].Strokes)));

    private static HashSet<WrittenNote> Bells(IEnumerable<SlotStroke> strokes) => [.. strokes.Select(s => s.Note)];

    private static Outcome.Found Found(SheetPrices prices, IReadOnlyList<Rule> rules) =>
        Assert.IsType<Outcome.Found>(Search.Run(prices, rules, ProofEffort.Quick, TestContext.Current.CancellationToken));

    private static Outcome.Impossible Impossible(SheetPrices prices, IReadOnlyList<Rule> rules) =>
        Assert.IsType<Outcome.Impossible>(Search.Run(prices, rules, ProofEffort.Quick, TestContext.Current.CancellationToken));
}
