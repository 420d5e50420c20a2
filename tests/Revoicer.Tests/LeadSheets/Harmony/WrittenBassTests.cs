using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.Harmony;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Harmony;

// An inversion is named by its bass, and a slash bass writes it (common practice).
public class WrittenBassTests
{
    private const string Head = "X:1\nT:Quay\nM:4/4\nL:1/4\nQ:1/4=60\nK:C\n";

    [Theory]
    [InlineData("\"C\"g4|]", "E,4|]", "C/E")]
    [InlineData("\"C\"g4|]", "G,4|]", "C/G")]
    [InlineData("\"C/E\"g4|]", "C,4|]", "C")]
    [InlineData("\"G7\"g4|]", "F,4|]", "G7/F")]
    [InlineData("\"C\"g4|]", "C,4|]", "C")]
    public void A_tone_of_the_chord_in_the_bass_is_its_slash_bass(string tune, string bass, string symbol) =>
        Assert.Equal([symbol], Symbols($"V:1\n{tune}\nV:2\n{bass}\n"));

    // A passing note belongs to no chord (common practice).
    [Theory]
    [InlineData("D,4|]")]
    [InlineData("z4|]")]
    public void A_bass_that_is_no_tone_of_the_chord_leaves_the_symbol_as_it_is(string bass) =>
        Assert.Equal(["C"], Symbols($"V:1\n\"C\"g4|]\nV:2\n{bass}\n"));

    [Theory]
    [InlineData("C,2 E,2|]", "C C/E")]
    [InlineData("C, E, G,2|]", "C C/E C/G")]
    [InlineData("C,/E,/G, C,2|]", "C C/G C")]
    [InlineData("C,2 C2|]", "C")]
    [InlineData("C,3 D,|]", "C")]
    public void A_bass_that_goes_on_to_another_tone_on_a_beat_begins_another_symbol(string bass, string symbols) =>
        Assert.Equal(symbols.Split(' '), Symbols($"V:1\n\"C\"g4|]\nV:2\n{bass}\n"));

    [Fact]
    public void The_stretches_of_a_bar_cover_it_as_before()
    {
        var sheet = Over("V:1\n\"C\"g4|\"F\"a2 \"G\"g2|]\nV:2\nC, E, G,2|A,2 B,2|]\n");
        Assert.All(sheet.Bars, bar => Assert.Equal(bar.Length.Quarters, bar.Chords.Sum(c => c.Length.Quarters)));
        Assert.All(sheet.Bars, bar => Assert.All(bar.Chords.Zip(bar.Chords.Skip(1)), pair => Assert.Equal(pair.First.Start + pair.First.Length, pair.Second.Start)));
    }

    // Two voices in thirds have no bass; what lies above middle C is none (common practice).
    [Fact]
    public void A_second_voice_above_middle_C_is_no_bass() => Assert.Equal(["C"], Symbols("V:1\n\"C\"g4|]\nV:2\ne4|]\n"));

    [Fact]
    public void A_tune_that_lies_lowest_is_no_bass() => Assert.Equal(["C"], Symbols("V:1\n\"C\"E,4|]\nV:2\nG4|]\n"));

    [Fact]
    public void A_voice_for_the_feet_is_the_bass_whatever_lies_below_it() =>
        Assert.Equal(["C/G"], Symbols("V:1\n\"C\"g4|]\nV:2\nE,4|]\nV:Pedals\nG,4|]\n"));

    private static string[] Symbols(string music) => [.. Over(music).Bars.SelectMany(b => b.Chords).Select(c => $"{c.Symbol}")];

    private static LeadSheet Over(string music)
    {
        var passage = Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage("quay.abc", Head + music, SheetChoice.First)).Value.WithFeet(null)!;
        return WrittenBass.Over(passage.Sheet, passage, PassageTune.Of(passage, "1")!);
    }
}
