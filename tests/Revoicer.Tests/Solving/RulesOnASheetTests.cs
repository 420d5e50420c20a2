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
                "bar 1 beat 1, C/E: no voicing of this tower keeps that first chord, last chord, cadences and slash chords have the root or slash bass in the lowest bell, so it was lifted there",
                "bar 2 beat 1, Bdim: no voicing of this tower keeps that first chord, last chord, cadences and slash chords have the root or slash bass in the lowest bell, so it was lifted there",
                "bar 3 beat 1, Em: no voicing of this tower keeps that first chord, last chord, cadences and slash chords have the root or slash bass in the lowest bell, so it was lifted there",
                "phrase from bar 1 beat 1: no voicing of this tower keeps that new chords on strong beats have a bass bell in 80 % of the places of a phrase, so one exception is allowed there",
            ],
            found.Lifted);
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
    public void The_runner_up_is_the_cheapest_allowed_voicing_of_other_bells()
    {
        var rules = SoundRules.Of(Sheet.Sound);
        var allowed = RuleBook.For(rules, Sheet.Prices).Allowed;
        var found = Found(Sheet, rules);

        Assert.All(found.Slots, (said, slot) =>
        {
            var chosen = Sheet.Candidates[slot][found.Choice[slot]].Voicing.Notes;
            var others = allowed[slot].Where(c => !chosen.Order().SequenceEqual(Sheet.Candidates[slot][c].Voicing.Notes.Order())).ToArray();
            Assert.Contains(said.RunnerUp!.Value, others);
            Assert.Equal(InPlace(found, slot, others).Min(), InPlace(found, slot, [said.RunnerUp.Value])[0]);
        });
    }

    [Fact]
    public void A_rule_stands_in_the_way_where_something_cheaper_is_forbidden_and_nowhere_else()
    {
        var rule = new Silence(Sheet.Plan.Slots[1]);
        var free = Found(Sheet, []);
        var ruled = Found(Sheet, [rule]);

        Assert.All(free.Slots, said => Assert.Null(said.BoundBy));
        Assert.All(ruled.Slots, (said, slot) =>
        {
            var all = InPlace(ruled, slot, [.. Enumerable.Range(0, Sheet.Candidates[slot].Count)]);
            Assert.Equal(all.Min() < InPlace(ruled, slot, [ruled.Choice[slot]])[0] ? rule.Words : null, said.BoundBy);
        });
        Assert.Equal(rule.Words, ruled.Slots[1].BoundBy);
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
