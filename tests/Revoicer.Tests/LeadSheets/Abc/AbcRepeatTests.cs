using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

/// <summary>The order in which bars are heard; the signs are those of the ABC standard 2.1, sections 4.8 to 4.10 and 3.1.9.</summary>
public class AbcRepeatTests
{
    [Theory]
    [InlineData("|: C4 | D4 :| E4 |]", "1 2 1(2) 2(2) 3")]
    [InlineData("C4 | D4 :| E4 |]", "1 2 1(2) 2(2) 3")]
    [InlineData("C4 :| D4 :| E4 |]", "1 1(2) 2 2(2) 3")]
    [InlineData("|: C4 :: D4 :|", "1 1(2) 2 2(2)")]
    [InlineData("|: C4 :|: D4 :|", "1 1(2) 2 2(2)")]
    [InlineData("|: C4 :||: D4 :|", "1 1(2) 2 2(2)")]
    [InlineData("|: C4 :|\n|: D4 :|", "1 1(2) 2 2(2)")]
    [InlineData("|: C4 |\n:| D4 |]", "1 1(2) 2")]
    [InlineData("|: C4 |1 D4 :|2 E4 |]", "1 2 1(2) 3")]
    [InlineData("|: C4 |[1 D4 :|[2 E4 |]", "1 2 1(2) 3")]
    [InlineData("|: C4 | [1 D4 :| [2 E4 :| F4 |]", "1 2 1(2) 3 4")]
    [InlineData("|: C4 |1,3 D4 :|2,4 E4 :| F4|", "1 2 1(2) 3 1(3) 2(2) 1(4) 3(2) 4")]
    [InlineData("|: C4 |1-3 D4 :|4 E4 |]", "1 2 1(2) 2(2) 1(3) 2(3) 1(4) 3")]
    [InlineData("|: C4 |1 D4 :|2 E4 :|3 F4 |]", "1 2 1(2) 3 1(3) 4")]
    [InlineData("|: C4 |1 D4 :|2 E4 || F4 |: G4 |1 A4 :|2 B4 |]", "1 2 1(2) 3 4 5 6 5(2) 7")]
    [InlineData("C4 |1 D4 :|2 E4 || F4 |1 G4 :|2 A4 |]", "1 2 1(2) 3 4 5 4(2) 6")]
    [InlineData("|:: C4 ::| D4|", "1 1(2) 1(3) 2")]
    [InlineData("C4 || D4 .| E4 [| F4 |]", "1 2 3 4")]
    [InlineData("|: C4 [|] D4 :|", "1 2 1(2) 2(2)")]
    public void Repeats(string music, string expected) => Assert.Equal(expected, AbcText.Order(AbcText.Music(music)));

    // Section 4.8: ":|" without "|:" goes back to the latest double bar or end of a repeat, whichever is later.
    [Theory]
    [InlineData("|: C4 | D4 || E4 | F4 |1 A4 :|2 B4 |]", "1 2 3 4 5 1(2) 2(2) 3(2) 4(2) 6")]
    [InlineData("|: C4 || D4 || E4 :| F4 |]", "1 2 3 1(2) 2(2) 3(2) 4")]
    [InlineData("|: C4 || D4 |1,2 E4 :|3 F4 || G4 :|", "1 2 3 1(2) 2(2) 3(2) 1(3) 2(3) 4 5 5(2)")]
    [InlineData("|: C4 |1 D4 || E4 :|2 F4 |]", "1 2 3 1(2) 4")]
    [InlineData("C4 || D4 | E4 :| F4 |]", "1 2 3 2(2) 3(2) 4")]
    [InlineData("C4 || D4 || E4 :| F4 |]", "1 2 3 3(2) 4")]
    [InlineData("C4 |] D4 :|", "1 2 2(2)")]
    [InlineData("C4 :| D4 || E4 :|", "1 1(2) 2 3 3(2)")]
    [InlineData("C4 || D4 :| E4 :|", "1 2 2(2) 3 3(2)")]
    [InlineData("C4 || D4 |1 E4 :|2 F4 |]", "1 2 3 2(2) 4")]
    [InlineData("|: C4 :| D4 || E4 |: F4 :| G4 || A4 :|", "1 1(2) 2 3 4 4(2) 5 6 6(2)")]
    public void A_double_bar_is_where_a_repeat_without_a_beginning_goes_back_to(string music, string expected) =>
        Assert.Equal(expected, AbcText.Order(AbcText.Music(music)));

    [Theory]
    [InlineData("P:ABAC", "1 2 1(2) 3")]
    [InlineData("P:(AB)2C", "1 2 1(2) 2(2) 3")]
    [InlineData("P:A.(B.C)2", "1 2 3 2(2) 3(2)")]
    [InlineData("P:((AB)2C)2", "1 2 1(2) 2(2) 3 1(3) 2(3) 1(4) 2(4) 3(2)")]
    [InlineData("P:A3", "1 1(2) 1(3)")]
    [InlineData("R:air", "1 2 3")]
    public void Parts_are_heard_in_the_order_of_the_head(string field, string expected) => Assert.Equal(
        expected,
        AbcText.Order(AbcText.Sheet($"X:1\n{field}\nM:4/4\nL:1/4\nK:C\nP:A\nC4|\nP:B\nD4|[P:C]E4|]")));

    [Fact]
    public void Repeats_inside_a_part_are_heard_each_time_behind_what_leads_in() => Assert.Equal(
        "1 2 2(2) 3 2(3) 2(4)",
        AbcText.Order(AbcText.Sheet("X:1\nP:ABA\nM:4/4\nL:1/4\nK:C\nC4|\nP:A\n|: D4 :|\nP:B\nE4|]")));

    [Fact]
    public void A_note_knows_the_bar_and_the_time_it_belongs_to()
    {
        var heard = Revoicer.LeadSheets.HeardTune.Of(AbcText.Music("C4 |: D4- | D4 :|"));

        Assert.Equal([(0, 1), (1, 1), (1, 2)], heard.Select(n => (n.WrittenBar, n.Pass)));
    }

    [Fact]
    public void A_repeat_without_an_end_is_heard_once_and_told()
    {
        Assert.Equal("1 2", AbcText.Order(AbcText.Music("|: C4 | D4 |]")));
        AbcText.AssertWarnsOf("a repeat without an end", AbcText.Head + "|: C4 | D4 |]");
    }

    [Fact]
    public void A_first_ending_without_a_second_is_left_out_the_second_time_and_told()
    {
        Assert.Equal("1 2 1(2) 3", AbcText.Order(AbcText.Music("|: C4 |1 D4 :| E4 |]")));
        AbcText.AssertWarnsOf("no ending for time 2", AbcText.Head + "|: C4 |1 D4 :| E4 |]");
    }
}
