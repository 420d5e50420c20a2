using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

public class AbcChordTests
{
    [Theory]
    [InlineData("\"C\"C4|\"G\"D2\"D7\"E2|", "C 4 | G 2, D7 2")]
    [InlineData("C2\"G\"D2|E4|", "- 2, G 2 | G 4")]
    [InlineData("\"C\"C2z\"G7\"z|", "C 3, G7 1")]
    [InlineData("\"C\"C4|\"N.C.\"D4|E4|", "C 4 | - 4 | - 4")]
    [InlineData("\"C\"C2\"(E7)\"D2|", "C 4")]
    [InlineData("\"G(Em)\"C2\"D7(b9)\"D2|", "G 2, D7(b9) 2")]
    [InlineData("\"G(b)\"C2\"(b)\"D2|", "G 4")]
    [InlineData("\"Em(H7)\"C2\"G(em)\"D2|", "Em 2, G 2")]
    [InlineData("\"C\"C2\"^a tempo\"\"G\"D2|", "C 2, G 2")]
    [InlineData("\"C\"C2 \"D/f#\"D2|", "C 2, D/F# 2")]
    [InlineData("\"C\"y C2 \"G\"{a}\"@1,2 x\"!trill!D2|", "C 2, G 2")]
    [InlineData("\"C\"C4-\"G\"|C4|", "C 4 | G 4")]
    [InlineData("\"C\"[CE\"_x\"]4|", "C 4")]
    [InlineData("\"C\"Z2|\"G\"Z|", "C 4 | C 4 | G 4")]
    [InlineData("\"C\"(3CDE F2|", "C 4")]
    [InlineData("\"C\"C>\"G\"D E2|", "C 3/2, G 5/2")]
    public void A_symbol_lasts_from_the_next_note_to_the_next_symbol(string music, string expected) =>
        Assert.Equal(expected, AbcText.Chords(AbcText.Music(music)));

    [Fact]
    public void A_second_ending_goes_on_from_what_stood_before_the_first() =>
        Assert.Equal("C 4 | G 4 | C 4", AbcText.Chords(AbcText.Music("|:\"C\"C4|1\"G\"D4:|2E4|]")));

    // A pickup fills the end of the bar before it. Common practice: under it the harmony of that bar goes on.
    [Theory]
    [InlineData("|:G|\"C\"C4|\"G7\"D3:|", "- | C | G7 | G7 | C | G7")]
    [InlineData("G|:\"C\"C4|\"G7\"D3:|", "- | C | G7 | C | G7")]
    [InlineData("|:\"D7\"G|\"C\"C4|\"G7\"D3:|", "D7 | C | G7 | D7 | C | G7")]
    [InlineData("\"F\"C4|\"C\"D3||G|\"C\"C4|\"G7\"D3:|", "F | C | C | C | G7 | G7 | C | G7")]
    [InlineData("|:G|\"C\"C4|1\"G7\"D3:|2\"F\"D3|]", "- | C | G7 | G7 | C | F")]
    [InlineData("|:D|C4|\"C\"D3:|", "- | - | C | C | - | C")]
    public void A_pickup_taken_again_carries_the_chord_that_sounds_there(string music, string expected)
    {
        var sheet = AbcText.Music(music);
        Assert.Equal(expected, string.Join(" | ", Revoicer.LeadSheets.HeardChords.Of(sheet).Select(bar => string.Join(", ", bar.Select(c => c.Symbol?.ToString() ?? "-")))));
    }

    [Fact]
    public void A_pickup_taken_again_is_voiced_under_the_chord_that_sounds_there() => Assert.Equal(
        "0 C 4@1; 0 G7 3@5; 1 G7 1@8; 1 C 4@9; 1 G7 3@13",
        string.Join("; ", Revoicer.Voicings.SlotCutting.Cut(AbcText.Music("|:G|\"C\"C4|\"G7\"D3:|"), Revoicer.LeadSheets.SheetTempi.Of(AbcText.Music("C4"))).InTime()
            .Select(h => $"{h.Hearing.Pass - 1} {h.Slot.Symbol} {h.Slot.Length}@{h.Hearing.Start}")));

    [Theory]
    [InlineData("C(b9)")]
    [InlineData("C(add)")]
    [InlineData("C7(b15)")]
    public void A_slip_in_the_brackets_of_a_chord_is_no_alternate(string symbol) =>
        Assert.True(AbcText.IsRefused($"{AbcText.Head}\"{symbol}\"C4|"));

    [Theory]
    [InlineData("\"C\"\"G\"C4|", "two chord symbols at one note")]
    [InlineData("C4|\"C\"|]", "a chord symbol with no note or rest after it")]
    [InlineData("\"a tempo\"C4|", "'a tempo' is no chord")]
    public void What_a_symbol_cannot_mean_is_told(string music, string warning) =>
        AbcText.AssertWarnsOf(warning, AbcText.Head + music);

    [Theory]
    [InlineData("V:1\nV:2\n[V:1]CDEF|G4|\n[V:2]\"Dm\"C2\"A7\"C2|\"G\"G4|", "Dm 2, A7 2 | G 4", "the voice that has the tune has no chord symbols; those of voice '2' are taken")]
    [InlineData("V:1\nV:2\nV:3\n[V:1]CDEF|G4|\n[V:2]\"Dm\"C4|\n[V:3]\"C\"C4|\"F\"G4|", "C 4 | F 4", "those of voice '3' are taken")]
    [InlineData("V:1\nV:2\n[V:1]CDEF|\"A\"G4|\n[V:2]\"Dm\"C4|\"G\"G4|", "- 4 | A 4", "")]
    [InlineData("V:1\nV:2\n[V:1]CDEF|G4|\n[V:2]\"Dm\"C4|", "- 4 | - 4", "")]
    public void Where_the_tune_has_no_symbols_those_of_another_voice_with_its_bars_are_taken(string music, string chords, string warning)
    {
        Assert.Equal(chords, AbcText.Chords(AbcText.Music(music)));
        Assert.Contains(warning, AbcText.Messages(AbcText.Head + music), StringComparison.Ordinal);
        Assert.Equal(warning.Length > 0, AbcText.Messages(AbcText.Head + music).Contains("are taken", StringComparison.Ordinal));
    }

    [Fact]
    public void A_tune_without_symbols_is_read() => Assert.Equal("- 4", AbcText.Chords(AbcText.Music("C4|")));
}
