using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

/// <summary>How a sheet becomes slots (../shared/design/3, "From lead sheet to slots"; common practice where it gives no source).</summary>
public sealed class SlotCuttingTests
{
    [Theory]
    [InlineData("4/4", 120, "| C | C | G |", "1.1 C 4; 2.1 C 4; 3.1 G 4")]
    [InlineData("4/4", 120, "| C C G G | G | F |", "1.1 C 2; 1.3 G 2; 2.1 G 4; 3.1 F 4")]
    [InlineData("4/4", 120, "| C | % | F |", "1.1 C 4; 2.1 C 4; 3.1 F 4")]
    [InlineData("6/8", 60, "| C G | G |", "1.1 C 3/2; 1.2 G 9/2")]
    public void A_slot_is_the_stretch_of_a_chord_within_a_bar(string time, int tempo, string bars, string slots) => Expect(time, tempo, bars, slots);

    [Theory]
    [InlineData(120, "1.1 C 3; 1.4 G 5; 3.1 C 4")] // a beat of 0.5 s
    [InlineData(76, "1.1 C 3; 1.4 G 5; 3.1 C 4")] // a beat of 0.79 s
    [InlineData(74, "1.1 C 3; 1.4 G 1; 2.1 G 4; 3.1 C 4")] // a beat of 0.81 s
    public void An_anticipated_chord_is_not_struck_again_on_the_downbeat(int tempo, string slots) =>
        Expect("4/4", tempo, "| C / / G | G / / / | C |", slots);

    [Fact]
    public void A_chord_that_was_not_struck_again_is_cut_by_the_next_bar_line() =>
        Expect("4/4", 120, "| C / / G | G | G | C |", "1.1 C 3; 1.4 G 5; 3.1 G 4; 4.1 C 4");

    [Theory]
    [InlineData("4/4", 60, "1.1 C 4; 2.1 G 4")] // 4 s
    [InlineData("4/4", 59, "1.1 C 2; 1.3 C 2; 2.1 G 4")]
    [InlineData("2/2", 30, "1.1 C 4; 2.1 G 4")]
    [InlineData("2/2", 29, "1.1 C 2; 1.2 C 2; 2.1 G 4")]
    [InlineData("6/8", 29, "1.1 C 3/2; 1.2 C 3/2; 2.1 G 3")]
    [InlineData("12/8", 59, "1.1 C 3; 1.3 C 3; 2.1 G 6")]
    [InlineData("3/4", 31, "1.1 C 3; 2.1 G 3")] // 5.8 s
    [InlineData("3/4", 29, "1.1 C 1; 1.2 C 2; 2.1 G 3")] // 6.2 s
    public void A_long_bar_is_parted_at_its_strongest_inner_beat(string time, int tempo, string slots) =>
        Expect(time, tempo, "| C | G |", slots);

    // In metres that chord grids do not have; a bar of free metre is its own (common practice: 2 + 3, 3 + 4).
    [Theory]
    [InlineData("5/4", "1.1 C 2; 1.3 C 3; 2.1 G 5")]
    [InlineData("7/4", "1.1 C 3; 1.4 C 4; 2.1 G 7")]
    [InlineData("6/4", "1.1 C 3; 1.4 C 3; 2.1 G 6")]
    [InlineData("1/4", "1.1 C 1; 2.1 G 1")]
    [InlineData("none", "1.1 C 4; 1.5 C 4; 2.1 G 8")]
    public void A_long_bar_of_another_metre_is_parted_about_its_middle(string meter, string slots)
    {
        var length = meter == "none" ? "8" : meter[..1];
        var reading = AbcReader.Read("trial.abc", $"X:1\nM:{meter}\nL:1/4\nQ:1/4=14\nK:C\n\"C\"z{length}|\"G\"z{length}|\n", SheetChoice.First);
        var sheet = Assert.IsType<Reading<LeadSheet>.Accepted>(reading).Value;

        Assert.Equal(slots, Sheets.Text(SlotCutting.Cut(sheet, TempoMap.Steady(sheet.Tempo!.Value))));
    }

    [Fact]
    public void A_long_bar_is_parted_only_inside_a_chord() =>
        Expect("4/4", 50, "| C C G G | C F F G | C |", "1.1 C 2; 1.3 G 2; 2.1 C 1; 2.2 F 1; 2.3 F 1; 2.4 G 1; 3.1 C 4");

    // An anticipation of the inner beat is none the less one (common practice).
    [Theory]
    [InlineData("\"C\"z3/2\"F\"z5/2|\"G\"z4|", "1.1 C 3/2; 1.2.5 F 5/2; 2.1 G 2; 2.3 G 2")]
    [InlineData("\"C\"z\"F\"z3|\"G\"z4|", "1.1 C 1; 1.2 F 1; 1.3 F 2; 2.1 G 2; 2.3 G 2")]
    public void A_chord_that_comes_right_before_the_inner_beat_is_not_struck_again_on_it(string bars, string slots)
    {
        var reading = AbcReader.Read("trial.abc", $"X:1\nM:4/4\nL:1/4\nQ:1/4=50\nK:C\n{bars}z4|\"C\"z4|z4|z4|]\n", SheetChoice.First);
        var sheet = Assert.IsType<Reading<LeadSheet>.Accepted>(reading).Value;

        Assert.StartsWith(slots, Sheets.Text(SlotCutting.Cut(sheet, TempoMap.Steady(sheet.Tempo!.Value))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(100, "| C | G | G |", "1.1 C 4; 2.1 G 8")]
    [InlineData(50, "| C G G G | G |", "1.1 C 1; 1.2 G 7")]
    [InlineData(100, "| C | G | G | G |", "1.1 C 4; 2.1 G 4; 3.1 G 8")]
    [InlineData(50, "| C C | C G G F |", "1.1 C 2; 1.3 C 2; 2.1 C 1; 2.2 G 1; 2.3 G 1; 2.4 F 1")]
    [InlineData(100, "| C | G | N.C. |", "1.1 C 4; 2.1 G 4")]
    public void The_last_chord_is_struck_once_and_rings_for_up_to_two_bars(int tempo, string bars, string slots) =>
        Expect("4/4", tempo, bars, slots);

    [Fact]
    public void A_repeat_is_heard_twice_and_voiced_once()
    {
        var plan = Sheets.Plan("4/4", 120, "|: C | G :|");

        Assert.Equal("1.1 C 4; 2.1 G 4", Sheets.Text(plan));
        Assert.Equal(
            ["0 pass 1 at 0.00 s", "2 pass 2 at 4.00 s", "1 pass 1 at 2.00 s", "3 pass 2 at 6.00 s"],
            plan.Slots.SelectMany(s => s.Hearings).Select(h => $"{h.Order} pass {h.Pass} at {h.At}"));
        Assert.Equal(["C", "G", "C", "G"], plan.InTime().Select(t => t.Slot.Symbol.ToString()));
        Assert.Equal("2.1 G 4", Sheets.Where(plan, s => s.IsLast));
    }

    [Fact]
    public void Endings_are_heard_in_turn()
    {
        var plan = Sheets.Plan("4/4", 120, "|: C | D |[1 G :|[2 F ||");

        Assert.Equal("1.1 C 4; 2.1 D 4; 3.1 G 4; 4.1 F 4", Sheets.Text(plan));
        Assert.Equal(["C", "D", "G", "C", "D", "F"], plan.InTime().Select(t => t.Slot.Symbol.ToString()));
        Assert.Equal("4.1 F 4", Sheets.Where(plan, s => s.IsLast));

        // D lies a fifth above G, so it belongs to the cadence of the first ending.
        Assert.Equal("2.1 D 4; 3.1 G 4; 4.1 F 4", Sheets.Where(plan, s => s.IsCadence));
    }

    [Fact]
    public void A_pickup_fills_the_end_of_a_bar()
    {
        var plan = Sheets.Plan("time: 3/4\ntempo: 100\npickup: 1\n| D7 | G | G | C |\n");

        Assert.Equal("0.3 D7 1; 1.1 G 3; 2.1 G 3; 3.1 C 3", Sheets.Text(plan));
        Assert.Equal("bar 0 beat 3", plan.Slots[0].Place);
        Assert.False(plan.Slots[0].IsStrong);
    }

    [Fact]
    public void Where_no_chord_stands_there_is_no_slot_and_the_next_chord_is_new()
    {
        var plan = Sheets.Plan("4/4", 100, "| N.C. | C | N.C. C | C | G |");

        Assert.Equal("2.1 C 4; 3.3 C 2; 4.1 C 4; 5.1 G 4", Sheets.Text(plan));
        Assert.Equal("2.1 C 4; 3.3 C 2; 5.1 G 4", Sheets.Where(plan, s => s.IsNewChord));
        Assert.Equal("2.1 C 4", Sheets.Where(plan, s => s.IsFirst));
    }

    [Theory]
    [InlineData("4/4", "| C G F G | C |", "1.1 C 1; 1.3 F 1; 2.1 C 4")]
    [InlineData("2/2", "| C G | C |", "1.1 C 2; 1.2 G 2; 2.1 C 4")]
    [InlineData("3/4", "| C G F | C |", "1.1 C 1; 2.1 C 3")]
    [InlineData("6/8", "| C G | C |", "1.1 C 3/2; 1.2 G 3/2; 2.1 C 3")]
    [InlineData("12/8", "| C G F G | C |", "1.1 C 3/2; 1.3 F 3/2; 2.1 C 6")]
    public void Slots_know_the_strong_beats(string time, string bars, string strong) =>
        Assert.Equal(strong, Sheets.Where(Sheets.Plan(time, 60, bars), s => s.IsStrong));

    [Fact]
    public void A_cadence_is_the_last_chord_of_a_phrase_and_the_one_a_fifth_above_before_it()
    {
        var plan = Sheets.Plan("4/4", 100, "| C | F | G7 | C | Am | F | F | G |");

        Assert.Equal("3.1 G7 4; 4.1 C 4; 8.1 G 4", Sheets.Where(plan, s => s.IsCadence));
        Assert.Equal("1.1 C 4; 3.1 G7 4; 4.1 C 4; 8.1 G 4", Sheets.Where(plan, s => s.WantsRootLowest));
    }

    [Theory]
    [InlineData("| C | D | E | F | G | A | B | C |", "1 5")]
    [InlineData("| C | D | E | F | G |", "1")]
    [InlineData("| C | D | E | F | G | A |", "1 5")]
    [InlineData("| C | D | E | F | G | A | B | C | D |", "1 5")]
    [InlineData("| C | D | E || F | G | A | B |", "1 4")]
    [InlineData("|: C | D :|: E | F :|", "1 3")]
    public void Phrases_end_at_double_bars_else_every_four_full_bars(string bars, string begin)
    {
        var plan = Sheets.Plan("4/4", 100, bars);
        Assert.Equal(begin, string.Join(' ', plan.Slots.Where(s => s.BeginsPhrase).Select(s => s.Bar)));
        Assert.Equal(plan.Phrases, plan.Slots.Select(s => s.Phrase).Distinct().Count());
    }

    [Fact]
    public void A_pickup_belongs_to_the_first_phrase_and_is_not_counted()
    {
        var plan = Sheets.Plan("time: 4/4\ntempo: 100\npickup: 1\n| G7 | C | D | E | F | G | A | B | C |\n");
        Assert.Equal("0 5", string.Join(' ', plan.Slots.Where(s => s.BeginsPhrase).Select(s => s.Bar)));
    }

    [Law(Arbitrary = [typeof(SheetGens)])]
    public void Slots_cover_what_has_a_chord_and_nothing_twice(GridText sheet)
    {
        var plan = Sheets.Plan(sheet.Text);
        var end = Beats.Zero;
        foreach (var (slot, hearing) in plan.InTime())
        {
            Assert.True(hearing.Start >= end, $"{Sheets.Text(slot)} begins before the slot before it ends");
            Assert.Equal(slot.Duration.Value, (hearing.Until - hearing.At).Value, 1e-6);
            end = hearing.Start + slot.Length;
        }

        var sounding = plan.InTime().Aggregate(Beats.Zero, (sum, t) => sum + t.Slot.Length);
        Assert.Equal(sheet.WithChord, sounding);
        Assert.Equal(Enumerable.Range(0, plan.Slots.Sum(s => s.Hearings.Count)), plan.InTime().Select(t => t.Hearing.Order));
    }

    private static void Expect(string time, int tempo, string bars, string slots) =>
        Assert.Equal(slots, Sheets.Text(Sheets.Plan(time, tempo, bars)));
}
