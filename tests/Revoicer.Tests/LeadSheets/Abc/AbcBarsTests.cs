using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

/// <summary>How bars are numbered and where they lie in their metre: as a player counts (common practice).</summary>
public class AbcBarsTests
{
    [Theory]
    [InlineData("C4|D4|", "1:4 2:4")]
    [InlineData("G|C4|D3|]", "0:1@3 1:4 2:3")]
    [InlineData("G|:C4|D3:|]", "0:1@3 1:4 2:3")]
    [InlineData("|:G|C4|D3::A|D4|E3:|", "0:1@3 1:4 2:3 2:1@3 3:4 4:3")]
    [InlineData("C4|D2:|E2|F4|]", "1:4 2:2 2:2@2 3:4")]
    [InlineData("|:C4|D2[1E2:|[2F2|G4|]", "1:4 2:2 2:2@2 3:2 4:4")]
    [InlineData("G|C4|1D3:|2E3|]", "0:1@3 1:4 2:3 3:3")]
    [InlineData("C4|\n|D4|\n", "1:4 2:4")]
    [InlineData("| C4 | | D4 ||", "1:4 2:4")]
    [InlineData("C5|D4|", "1:5 2:4")]
    [InlineData("C4|\nM:3/4\nD3|", "1:4 2:3")]
    [InlineData("C4|[M:none]D5/2|E3|", "1:4 2:5/2 3:3")]
    public void Numbers(string music, string expected) =>
        Assert.Equal(expected, AbcText.Bars(AbcText.Music(music)));

    [Theory]
    [InlineData("G|C4|D3|]")]
    [InlineData("C4|D2:|E2|F4|]")]
    [InlineData("|:G|C4|D3::A|D4|E3:|")]
    [InlineData("G|C4|1D3:|2E3|]")]
    public void Bars_that_signs_part_are_no_matter(string music) => Assert.Equal("", AbcText.Messages(AbcText.Head + music));

    [Theory]
    [InlineData("C4|D3|E4|F4|", "bar 2 has 3 quarters")]
    [InlineData("C4|D5|E4|F4|", "bar 2 has 5 quarters")]
    [InlineData("C9/2|D4|", "bar 1 has 9/2 quarters")]
    public void Bars_that_their_metre_does_not_fill_are_told(string music, string warning) =>
        AbcText.AssertWarnsOf(warning, AbcText.Head + music);

    [Fact]
    public void Sections_end_at_double_bars_repeats_and_the_end() => Assert.Equal(
        [false, true, true, true, true, true],
        AbcText.Music("C4|D4||E4:|F4|]G4[|A4").Bars.Select(b => b.EndsSection));

    [Fact]
    public void In_free_metre_a_bar_is_its_own_metre() => Assert.Equal(
        ["7/4", "5/8", "3/4"],
        AbcText.Sheet("X:1\nM:none\nL:1/4\nK:C\nC7|D5/2|E3|").Bars.Select(b => b.Meter.ToString()));
}
