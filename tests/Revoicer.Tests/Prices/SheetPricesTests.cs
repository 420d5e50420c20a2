using FsCheck.Xunit;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Tests.Oracles;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Prices;

public sealed class SheetPricesTests
{
    // Two bars heard twice, a stretch without chord, a bass that the symbol gives; so quick that the lead of a roll can
    // meet the end of the chord before.
    private static readonly PricedSheet Sheet = SmallSheets.Priced(
        SmallSheets.Sheet(["C G7", "Em/G -", "G7sus4 G7", "Cmaj7 C"], [0, 1, 0, 1, 2, 3]), SmallSheets.EightBells, ShippedSounds.Default, quarters: 120);

    // Two bars of one chord, each heard twice on end.
    private static readonly PricedSheet Turns = SmallSheets.Priced(
        SmallSheets.Sheet(["C", "G7"], [0, 0, 1, 1]), SmallSheets.EightBells, ShippedSounds.Default);

    // Chords of a second that share tones; Cmaj7 is heard after the Em before it and after the one behind it.
    private static readonly PricedSheet Sharing = SmallSheets.Priced(
        SmallSheets.Sheet(["C Em", "Cmaj7 Em", "G Em7", "G7 C"], [0, 1, 1, 2, 3]), SmallSheets.EightBells, ShippedSounds.Default, quarters: 120);

    private static readonly (PricedSheet Sheet, int[] Slots) SharingWrittenOut = Unfold(Sharing);

    private static readonly (PricedSheet Sheet, int[] Slots) WrittenOut = Unfold(Sheet);

    private static readonly (PricedSheet Sheet, int[] Slots) TurnsWrittenOut = Unfold(Turns);

    [Law(MaxTest = 300)]
    public void Each_term_is_what_the_strokes_cost_one_by_one(int seed)
    {
        var choice = SmallSheets.Choice(Sheet, seed);
        var totals = Totals(Sheet, choice);
        var slow = new StrokeByStroke(Sheet, choice);

        Assert.Equal(slow.LeftOut(), totals[Term.MissingTones] + totals[Term.Thin] + totals[Term.NotRinging]);
        Assert.Equal(slow.OwnRoughness(), totals[Term.OwnRoughness]);
        Assert.Equal(slow.Ringing(), totals[Term.Ringing]);
        Assert.Equal(slow.Contradiction(), totals[Term.Contradiction]);
        Assert.Equal(slow.Moves(), totals[Term.Moves]);
        Assert.Equal(slow.VoiceLeading(), totals[Term.VoiceLeading]);
        Assert.Equal(slow.Tendencies(), totals[Term.Tendency]);
        Assert.Equal(slow.NumberOfTones(), totals[Term.NumberOfTones]);
        Assert.Equal(slow.TopLine(), totals[Term.TopLine]);
        Assert.Equal(slow.Steadiness(), totals[Term.Steadiness]);
        Assert.Equal(slow.Bass(), totals[Term.Bass] + totals[Term.BassLine]);
    }

    [Law(MaxTest = 300)]
    public void Tones_left_to_the_chord_before_cost_what_is_said_of_them_one_by_one(int seed)
    {
        var choice = SmallSheets.Choice(Sharing, seed);
        var totals = Totals(Sharing, choice);

        Assert.Equal(new StrokeByStroke(Sharing, choice).LeftOut(), totals[Term.MissingTones] + totals[Term.Thin] + totals[Term.NotRinging]);
        Assert.Equal(totals.Values.Sum(), Sharing.Prices.Whole(choice));
    }

    // The same candidates priced with nothing shared: a tone that does not ring on costs as much as one left out.
    [Law(MaxTest = 300)]
    public void Nothing_is_cheaper_for_shared_tones_but_where_one_rings_on(int seed)
    {
        var choice = SmallSheets.Choice(Sharing, seed);
        var heard = Sharing.Plan.InTime().Select(h => (h.Slot, Sharing.Candidates[h.Slot.Index][choice[h.Slot.Index]].Voicing)).ToArray();
        var ringsOn = heard.Zip(heard.Skip(1)).Any(pair => pair.First.Voicing.Upper.Any(b => pair.Second.Slot.LeftRinging(pair.Second.Voicing).Contains(b.Note.PitchClass)));

        var saved = NothingShared.Whole(choice) - Sharing.Prices.Whole(choice);

        Assert.True(ringsOn ? saved > 0 : saved == 0, $"{saved} saved");
    }

    private static readonly SheetPrices NothingShared = SheetPrices.Of(
        Sharing.Prices.Instrument,
        Sharing.Sound,
        Sharing.Plan with { Slots = Sharing.Plan.Slots.Select(s => s with { Shared = default }).ToItems() },
        Sharing.Candidates,
        TestContext.Current.CancellationToken);

    [Law]
    public void The_whole_price_is_the_sum_of_all_terms(int seed)
    {
        var choice = SmallSheets.Choice(Sheet, seed);
        Assert.Equal(Totals(Sheet, choice).Values.Sum(), Sheet.Prices.Whole(choice));
        Assert.Equal(Sheet.Prices.Whole(choice), Sheet.Prices.WholeTerms(choice).Sum());
    }

    [Law]
    public void Terms_with_the_others_add_up_to_the_price_in_place(int seed)
    {
        var choice = SmallSheets.Choice(Sheet, seed);
        for (var slot = 0; slot < choice.Length; slot++)
        {
            var other = new Random(seed + slot).Next(Sheet.Candidates[slot].Count);
            Assert.Equal(Sheet.Prices.Alone(slot)[other], Sheet.Prices.TermsAlone(slot, other).Sum());
            Assert.Equal(Sheet.Prices.InPlace(choice, slot, [other])[0], Sheet.Prices.WithOthers(choice, slot, other).Sum());
        }
    }

    [Law]
    public void What_a_change_of_one_slot_costs_is_the_difference_in_place(int seed)
    {
        var choice = SmallSheets.Choice(Sheet, seed);
        var slot = new Random(seed).Next(choice.Length);
        int[] changed = [.. choice];
        changed[slot] = (choice[slot] + 1) % Sheet.Candidates[slot].Count;

        var inPlace = Sheet.Prices.InPlace(choice, slot, [choice[slot], changed[slot]]);

        Assert.Equal(inPlace[1] - inPlace[0], Sheet.Prices.Whole(changed) - Sheet.Prices.Whole(choice));
    }

    [Fact]
    public void A_pair_costs_the_same_seen_from_either_slot_and_never_less_than_nothing() =>
        Assert.All([Sheet.Prices, Sharing.Prices], AssertPairsAgree);

    private static void AssertPairsAgree(SheetPrices prices)
    {
        for (var slot = 0; slot < prices.Count; slot++)
        {
            foreach (var other in prices.Linked(slot))
            {
                Assert.Contains(slot, prices.Linked(other));
                var there = Pairs(prices, slot, other);
                Assert.Equal(there, Transposed(Pairs(prices, other, slot)));
                Assert.All(there, row => Assert.All(row, price => Assert.True(price >= 0)));
            }
        }
    }

    [Fact]
    public void Slots_that_are_not_linked_are_refused_with_their_number()
    {
        var wrong = Assert.Throws<ArgumentOutOfRangeException>(() => Sheet.Prices.PairPrices(0, 0, 0, [0], new long[1]));
        Assert.Equal(("other", 0), (wrong.ParamName, wrong.ActualValue));
        Assert.Equal(0, Sheet.Prices.Pair(0, 0, 0, 0));
    }

    [Law]
    public void A_section_heard_twice_costs_what_the_same_strokes_cost_written_out(int seed) =>
        AssertEqualWrittenOut(Sheet, WrittenOut, seed);

    [Law]
    public void A_chord_that_follows_itself_costs_what_it_costs_written_out(int seed) =>
        AssertEqualWrittenOut(Turns, TurnsWrittenOut, seed);

    [Law]
    public void Tones_that_ring_on_cost_what_they_cost_written_out(int seed) =>
        AssertEqualWrittenOut(Sharing, SharingWrittenOut, seed);

    private static void AssertEqualWrittenOut(PricedSheet sheet, (PricedSheet Sheet, int[] Slots) writtenOut, int seed)
    {
        var choice = SmallSheets.Choice(sheet, seed);
        Assert.Equal(writtenOut.Sheet.Prices.Whole([.. writtenOut.Slots.Select(slot => choice[slot])]), sheet.Prices.Whole(choice));
    }

    // One slot for each hearing, in order of time, and which slot it was.
    private static (PricedSheet Sheet, int[] Slots) Unfold(PricedSheet sheet)
    {
        var heard = sheet.Plan.InTime().ToArray();
        var slots = heard.Select((h, index) => h.Slot with { Index = index, Hearings = [h.Hearing] }).ToItems();
        return (SmallSheets.Priced(new SlotPlan(slots, sheet.Plan.Phrases), sheet.Prices.Instrument.Tower, sheet.Sound), [.. heard.Select(h => h.Slot.Index)]);
    }

    // Each pair is in the terms of two slots.
    private static Dictionary<Term, long> Totals(PricedSheet sheet, int[] choice)
    {
        var slots = Enumerable.Range(0, choice.Length);
        var alone = slots.Select(slot => sheet.Prices.TermsAlone(slot, choice[slot])).ToArray();
        var withOthers = slots.Select(slot => sheet.Prices.WithOthers(choice, slot, choice[slot])).ToArray();
        return Enum.GetValues<Term>().ToDictionary(term => term, term => (alone.Sum(a => (long)a[term]) + withOthers.Sum(w => (long)w[term])) / 2);
    }

    private static long[][] Pairs(SheetPrices prices, int slot, int other)
    {
        int[] all = [.. Enumerable.Range(0, prices.Candidates(other).Count)];
        return [.. Enumerable.Range(0, prices.Candidates(slot).Count).Select(candidate =>
        {
            var row = new long[all.Length];
            prices.PairPrices(slot, candidate, other, all, row);
            return row;
        })];
    }

    private static long[][] Transposed(long[][] table) =>
        [.. table[0].Select((_, column) => table.Select(row => row[column]).ToArray())];
}
