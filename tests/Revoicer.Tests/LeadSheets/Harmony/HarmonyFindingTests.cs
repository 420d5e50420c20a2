using Revoicer.LeadSheets.Harmony;
using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Harmony;

/// <summary>Chords of short passages, as any musician would name them (common practice).</summary>
public sealed class HarmonyFindingTests
{
    [Theory]
    [InlineData("C", "[CEGc]4")]
    [InlineData("Am", "[A,EAc]4")]
    [InlineData("G7", "[G,DFB]4")]
    [InlineData("Dm7", "[D,A,CF]4")]
    [InlineData("Fmaj7", "[F,A,CE]4")]
    [InlineData("Bm7b5", "[B,DFA]4")]
    [InlineData("Bdim7", "[B,DF_A]4")]
    [InlineData("Bdim", "[B,DFB]4")]
    [InlineData("Caug", "[CE^Gc]4")]
    [InlineData("Gsus4", "[G,CDG]4")]
    [InlineData("G7sus4", "[G,CDF]4")]
    [InlineData("Am7/C", "[C,G,EA]4")]
    [InlineData("Fm6", "[F,C_AD]4")]
    [InlineData("CmMaj7", "[C_EGB]4")]
    [InlineData("E7b9", "[E,B,^GD=F]4")]
    [InlineData("C5", "[C,G,CG]4")]
    [InlineData("C/E", "[E,G,Cc]4")]
    [InlineData("C/G", "[G,CEc]4")]
    [InlineData("G7/F", "[F,G,DB]4")]
    [InlineData("Am7", "[A,CEG]4")]
    public void A_chord_is_known_by_its_tones_and_its_bass(string symbol, string notes) =>
        Assert.Equal($"{symbol.Replace("Caug", "C+", StringComparison.Ordinal)} 4", Chorded.Of(notes));

    [Fact]
    public void Notes_that_pass_by_belong_to_no_chord() => Assert.Equal(
        "C 4 | G 2, C 2",
        Chorded.Of("c/d/e/f/ e d/c/ | B/c/d/B/ c2", "[EG]4 | [DG]2 [EG]2", "C,4 | G,2 C,2"));

    [Fact]
    public void A_cadence_is_taken_beat_by_beat() => Assert.Equal(
        "C 1, F 1, C/G 1, G7 1 | C 4",
        Chorded.Of("c c c B | c4", "G A G F | E4", "E F E D | C4", "C, F, G, G, | C,4"));

    [Fact]
    public void A_broken_chord_is_one_chord() => Assert.Equal("Am 3 | E7 3", Chorded.Of(
        Chorded.Passage("M:3/4\nK:Am", "A, c e | E, ^G d", "z A c | z B d", "A,,3 | E,,3")));

    [Fact]
    public void A_chord_holds_where_a_single_line_goes_on_over_it() =>
        Assert.Equal("C 4 | C 4 | F 4", Chorded.Of("c4 | e d/e/ c G | f4", "[EG]4 | z4 | [Ac]4", "C,4 | z4 | F,4"));

    [Fact]
    public void Another_bass_under_a_chord_is_another_symbol() =>
        Assert.Equal("C 2, C/E 2 | Am 2, Am7/G 2", Chorded.Of("[EGc]2 [EGc]2 | [EAc]2 [EAc]2", "C,2 E,2 | A,2 G,2"));

    [Fact]
    public void A_pedal_point_stands_behind_the_slash() =>
        Assert.Equal("C 4 | G/C 4 | C 4", Chorded.Of("[EGc]4 | [DGB]4 | [EGc]4", "C,4 | C,4 | C,4"));

    [Fact]
    public void What_makes_no_chord_is_told_with_its_place()
    {
        var found = HarmonyFinding.Of(Chorded.Passage("M:4/4\nK:C", "C E G c | [C^CD^DE]4 | [CEGc]4", "C E G c | [^C,D,F,^F,]4 | C,4"), cancel: TestContext.Current.CancellationToken);
        Assert.Equal("C 4 | - 4 | C 4", Chorded.Told(found));
        Assert.Equal([new UnclearStretch(1, 2, Beats.Zero, Beats.OfQuarters(4))], found.Unclear);
        Assert.Equal(2, found.Found);
    }

    [Fact]
    public void One_tone_alone_is_no_chord_and_silence_needs_none()
    {
        var found = HarmonyFinding.Of(Chorded.Passage("M:4/4\nK:C", "z4 | G4 | z4 | [CEG]4 | z4", "z4 | G,4 | z4 | C,4 | z4"), cancel: TestContext.Current.CancellationToken);
        Assert.Equal("- 4 | - 4 | - 4 | C 4 | C 4", Chorded.Told(found));
        Assert.Equal([2], found.Unclear.Select(u => u.Number));
    }

    [Theory]
    [InlineData("Eb", "[_A,C_E_A]4", "Ab 4")]
    [InlineData("E", "[^G,B,^D^G]4", "G#m 4")]
    [InlineData("C", "[_B,DF_B]4", "Bb 4")]
    [InlineData("Am", "[E,^GBd]4", "E7 4")]
    [InlineData("Am", "[^G,B,DF]4", "G#dim7 4")]
    [InlineData("F", "[^F,A,C_E]4", "F#dim7 4")]
    [InlineData("none", "[^C,^G,^C=F]4", "Db 4")]
    public void Symbols_are_spelled_by_the_key(string key, string notes, string chords) =>
        Assert.Equal(chords, Chorded.Of(Chorded.Passage($"M:4/4\nK:{key}", notes)));

    [Fact]
    public void A_change_of_key_changes_the_spelling() =>
        Assert.Equal("Db 4 | C# 4", Chorded.Of(Chorded.Passage("M:4/4\nK:Ab", "[DFAd]4 |[K:B] [C=FG c]4")));

    [Fact]
    public void Symbols_of_the_file_stand_and_what_lies_before_them_is_found()
    {
        var found = HarmonyFinding.Of(Chorded.Passage("M:4/4\nK:C", "[CEG]4 | [DFA]2 \"G7\"[CEG]2 | [CEG]4 | \"N.C.\"[CEG]4"), cancel: TestContext.Current.CancellationToken);
        Assert.Equal("C 4 | Dm 2, G7 2 | G7 4 | - 4", Chorded.Told(found));
        Assert.Equal(2, found.Found);
        Assert.Empty(found.Unclear);

        var whole = Chorded.Passage("M:4/4\nK:C", "\"Am\"[CEG]4 | [DFA]4");
        Assert.Equal(whole.Sheet, HarmonyFinding.Of(whole, cancel: TestContext.Current.CancellationToken).Sheet);
    }

    [Fact]
    public void The_sheet_keeps_its_bars_and_the_spans_cover_them()
    {
        var passage = Chorded.Passage("M:3/4\nK:G", "D | G A B |: c2 d :|1 B3 :|2 G2 |]", "D, | G,3 |: A,2 D, :|1 G,3 :|2 G,2 |]");
        var found = HarmonyFinding.Of(passage, cancel: TestContext.Current.CancellationToken).Sheet;
        Assert.True(found.HasBarsOf(passage.Sheet));
        Assert.All(found.Bars, bar =>
        {
            var at = Beats.Zero;
            foreach (var span in bar.Chords)
            {
                Assert.Equal(at, span.Start);
                at += span.Length;
            }

            Assert.Equal(bar.Length, at);
        });
    }
}
