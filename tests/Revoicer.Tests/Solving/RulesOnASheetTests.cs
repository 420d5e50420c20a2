using Revoicer.Bells;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Tests.Prices;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>What a search says of the rules: kept, lifted where the tower cannot, in the way of something cheaper.</summary>
public sealed class RulesOnASheetTests
{
    private static readonly PricedSheet Sheet = SmallSheets.Priced(
        SmallSheets.Sheet(["C", "Em", "G7", "C"]), SmallSheets.EightBells, ShippedSounds.Default);

    private static readonly PricedSheet WithoutBass = SmallSheets.Priced(
        SmallSheets.Sheet(["C/E", "Bdim", "Em"]), SmallSheets.EightBells, ShippedSounds.Default);

    [Theory]
    [InlineData("chapel-23")]
    [InlineData("harbour-47")]
    public void First_chord_last_chord_and_cadences_have_their_root_or_slash_bass_lowest(string tower)
    {
        var sheet = SmallSheets.Priced(SmallSheets.Sheet(["F/A", "D7", "Gm7 C7", "F"]), ShippedTowers.Named(tower), ShippedSounds.Default);
        var found = Found(sheet, SoundRules.Of(sheet.Sound));

        Assert.Empty(found.Lifted);
        Assert.All(sheet.Plan.Slots.Where(s => s.WantsRootLowest), slot =>
            Assert.Equal(slot.Symbol.Lowest.PitchClass, sheet.Candidates[slot.Index][found.Choice[slot.Index]].Lowest?.PitchClass));
        Assert.Equal(3, sheet.Plan.Slots.Count(s => s.WantsRootLowest));
    }

    [Fact]
    public void A_rule_that_the_tower_cannot_keep_is_lifted_with_a_sentence()
    {
        // The pedals are C3, G3 and C4: no bass bell for E and B, and none at all for B, D and F.
        var found = Found(WithoutBass, SoundRules.Of(WithoutBass.Sound));

        Assert.Equal(
            [
                "bar 1 beat 1, C/E: Slipway, 8 bells has no pedal on E, so another tone lies lowest",
                "bar 2 beat 1, Bdim: Slipway, 8 bells has no pedal on B, so another tone lies lowest",
                "bar 3 beat 1, Em: Slipway, 8 bells has no pedal on E, so another tone lies lowest",
                "phrase from bar 1 beat 1: no voicing of this tower keeps that new chords on strong beats have a bass bell in 80 % of the places of a phrase, so one exception is allowed there",
            ],
            found.Lifted);
    }

    // Two bells at once are too few for three tones: the number of tones yields before the root in the bass does.
    [Fact]
    public void Where_there_are_too_few_tones_to_be_had_the_root_stays_lowest_and_the_tones_are_said_to_be_fewer()
    {
        var tower = SmallSheets.EightBells with { Limits = [new LimitOverride("bells_at_once", 2, null)] };
        var sheet = SmallSheets.Priced(SmallSheets.Sheet(["C", "G7", "C"]), tower, ShippedSounds.Default);
        var found = Found(sheet, SoundRules.Of(sheet.Sound));

        Assert.All(sheet.Plan.Slots, slot =>
        {
            var chosen = sheet.Candidates[slot.Index][found.Choice[slot.Index]];
            Assert.Equal(slot.Symbol.Root.PitchClass, chosen.Lowest?.PitchClass);
            Assert.Equal(2, chosen.Notes.Count);
        });
        Assert.Contains("bar 3 beat 1, C: fewer tones than asked for, so that C lies lowest; hands and feet reach no more", found.Lifted);
    }

    // Whoever forbids a roll, or asks for a figure, has not asked for fewer tones.
    [Theory]
    [InlineData("[[ban]]; bar = 3; figure = \"rolled\"")]
    [InlineData("[[ban]]; bar = 3; bells = [\"C3\", \"E4\"]")]
    [InlineData("[[no-rolls]]; from = 1; to = 3")]
    [InlineData("[[pin]]; bar = 3; figure = \"together\"")]
    public void Fewer_tones_are_not_called_a_wish_where_nobody_asked_for_a_voicing(string wish)
    {
        var tower = SmallSheets.EightBells with { Limits = [new LimitOverride("bells_at_once", 2, null)] };
        var sheet = SmallSheets.Priced(SmallSheets.Sheet(["C", "G7", "C"]), tower, ShippedSounds.Default);
        var found = Found(sheet, [.. Wished.Rules(wish), .. SoundRules.Of(sheet.Sound)]);

        Assert.Contains("bar 3 beat 1, C: fewer tones than asked for, so that C lies lowest; hands and feet reach no more", found.Lifted);
        Assert.DoesNotContain(found.Lifted, sentence => sentence.Contains("as you wish", StringComparison.Ordinal));
    }

    [Fact]
    public void Counts_that_no_choice_keeps_are_named()
    {
        var impossible = Assert.IsType<Outcome.Impossible>(
            Search.Run(Sheet.Prices, [new NeverTheSame(first: true), new NeverTheSame(first: false)], ProofEffort.Quick, TestContext.Current.CancellationToken));

        Assert.Equal(
            ["the first half has no candidate", "the second half has no candidate"],
            Assert.Single(impossible.Conflicts).Rules.Select(r => r.Words));
    }

    [Fact]
    public void Alternatives_are_the_cheapest_changes_to_other_bells_that_every_rule_admits()
    {
        var rules = SoundRules.Of(Sheet.Sound);
        var book = RuleBook.For(rules, Sheet.Prices);
        var found = Found(Sheet, rules);

        Assert.All(found.Slots, (said, slot) =>
        {
            var prices = Admitted(found, book, slot)
                .GroupBy(c => Sheet.Candidates[slot][c].Notes)
                .Where(bells => bells.Key != Sheet.Candidates[slot][found.Choice[slot]].Notes)
                .Select(bells => InPlace(found, slot, [.. bells]).Min())
                .Order()
                .Take(SlotOutcome.MostAlternatives);
            Assert.Equal(prices, InPlace(found, slot, [.. said.Alternatives]));
        });
    }

    // A roll is cheap and a phrase may have few: without the count over the phrase a third one would be named as next best.
    [Fact]
    public void What_a_rule_over_several_chords_forbids_is_no_alternative_but_named_with_the_rule()
    {
        SlotRule[] silence = [new Silence(Sheet.Plan.Slots[1])];
        var rule = new FewSilent();
        var found = Found(Sheet, [.. silence, rule]);
        var book = RuleBook.For([.. silence, rule], Sheet.Prices);

        Assert.All(found.Slots, (said, slot) => Assert.Subset(Admitted(found, book, slot).ToHashSet(), said.Alternatives.ToHashSet()));
        Assert.All(Sheet.Plan.Slots.Where(s => s.Index != 1), slot =>
            Assert.DoesNotContain(found.Slots[slot.Index].Alternatives, c => Sheet.Candidates[slot.Index][c].Figure == Figure.Silent));
    }

    private static IEnumerable<int> Admitted(Outcome.Found found, RuleBook book, int slot) => book.Allowed[slot].Where(candidate =>
        book.Counters.AreKept([.. found.Choice.Select((chosen, at) => at == slot ? candidate : chosen)]));

    private sealed class FewSilent : PhraseRule
    {
        public override string Words => "at most one chord is silent";

        public override int Count(Slot slot, Candidate candidate) => candidate.Figure == Figure.Silent ? 1 : 0;

        public override int Most(IEnumerable<Slot> phrase) => 1;
    }

    [Fact]
    public void A_rule_stands_in_the_way_where_something_cheaper_is_forbidden_and_nowhere_else()
    {
        var rule = new Silence(Sheet.Plan.Slots[1]);
        var free = Found(Sheet, []);
        var ruled = Found(Sheet, [rule]);

        Assert.All(free.Slots, said => Assert.Null(said.Barred));
        Assert.All(ruled.Slots, (said, slot) =>
        {
            var all = InPlace(ruled, slot, [.. Enumerable.Range(0, Sheet.Candidates[slot].Count)]);
            Assert.Equal(all.Min() < InPlace(ruled, slot, [ruled.Choice[slot]])[0] ? rule.Words : null, said.Barred?.Rule);
        });
        Assert.Equal(rule.Words, ruled.Slots[1].Barred?.Rule);
    }

    private static long[] InPlace(Outcome.Found found, int slot, int[] candidates) =>
        Sheet.Prices.InPlace(found.Choice, slot, candidates);

    private static Outcome.Found Found(PricedSheet sheet, IReadOnlyList<Rule> rules) =>
        Assert.IsType<Outcome.Found>(Search.Run(sheet.Prices, rules, ProofEffort.Quick, TestContext.Current.CancellationToken));

    private sealed class Silence(Slot where) : SlotRule
    {
        public override string Words => "silence";

        public override bool Concerns(Slot slot) => slot == where;

        public override bool Allows(Slot slot, Candidate candidate) => candidate.Figure == Figure.Silent;
    }

    // Two such rules count every candidate of every slot between them, none of them all candidates of a slot.
    private sealed class NeverTheSame(bool first) : PhraseRule
    {
        public override string Words => $"the {(first ? "first" : "second")} half has no candidate";

        public override int Count(Slot slot, Candidate candidate) => candidate.Figure == Figure.Together == first ? 1 : 0;

        public override int Most(IEnumerable<Slot> phrase) => 0;
    }
}
