using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

/// <summary>Notes and rests. What is expected follows the ABC standard 2.1, chapter 4, unless said otherwise.</summary>
public class AbcNotesTests
{
    [Theory]
    [InlineData("C D E F | G A B c |", "C4 1, D4 1, E4 1, F4 1, G4 1, A4 1, B4 1, C5 1")]
    [InlineData("C, c' C,, c''|", "C3 1, C6 1, C2 1, C7 1")]
    [InlineData("^c _B =A ^^F|", "C#5 1, Bb4 1, A4 1, F##4 1")]
    [InlineData("__B2 ^B2|", "Bbb4 2, B#4 2")]
    public void Pitches(string music, string expected) => Assert.Equal(expected, AbcText.Heard(music));

    [Theory]
    [InlineData("A4|", "A4 4")]
    [InlineData("A A/ A/2 A// A/4 A///|", "A4 1, A4 1/2, A4 1/2, A4 1/4, A4 1/4, A4 1/8")]
    [InlineData("A3/2 A3/4 A7/4|", "A4 3/2, A4 3/4, A4 7/4")]
    public void Lengths(string music, string expected) => Assert.Equal(expected, AbcText.Heard(music));

    [Theory]
    [InlineData("A>B", "A4 3/2, B4 1/2")]
    [InlineData("A<B", "A4 1/2, B4 3/2")]
    [InlineData("A>>B", "A4 7/4, B4 1/4")]
    [InlineData("A<<B", "A4 1/4, B4 7/4")]
    [InlineData("A>>>B", "A4 15/8, B4 1/8")]
    [InlineData("A2 > z2 B2>A2", "A4 3, B4 3 at 4, A4 1")]
    [InlineData("A>B>c", "A4 3/2, B4 3/4, C5 1/2")]
    public void Broken_rhythm(string music, string expected) => Assert.Equal(expected, AbcText.Heard(music + "|"));

    // The table of section 4.13: what q is for each p where it is left out.
    [Theory]
    [InlineData("4/4", "(2CC", "3/2")]
    [InlineData("4/4", "(3CCC", "2/3")]
    [InlineData("4/4", "(4CCCC", "3/4")]
    [InlineData("4/4", "(5CCCCC", "2/5")]
    [InlineData("6/8", "(5CCCCC", "3/5")]
    [InlineData("4/4", "(6CCCCCC", "1/3")]
    [InlineData("4/4", "(7CCCCCCC", "2/7")]
    [InlineData("9/8", "(7CCCCCCC", "3/7")]
    [InlineData("4/4", "(8CCCCCCCC", "3/8")]
    [InlineData("4/4", "(9CCCCCCCCC", "2/9")]
    [InlineData("12/8", "(9CCCCCCCCC", "1/3")]
    [InlineData("4/4", "(3:2CCC", "2/3")]
    [InlineData("4/4", "(3::CCC", "2/3")]
    [InlineData("4/4", "(5:4:5CCCCC", "4/5")]
    public void Tuplets(string meter, string music, string each)
    {
        var sheet = AbcText.Sheet($"X:1\nM:{meter}\nL:1/4\nK:C\n{music}");
        var count = music.Count(c => c == 'C');

        Assert.Equal(string.Join(", ", Enumerable.Repeat($"C4 {each}", count)), AbcText.Heard(sheet));
    }

    [Theory]
    [InlineData("(3:2:2 c2d e", "C5 4/3, D5 2/3, E5 1")]
    [InlineData("(3::2 c2d e", "C5 4/3, D5 2/3, E5 1")]
    [InlineData("(3c{g}z[eg] c", "C5 2/3, E5 2/3 at 4/3, G5 2/3 at 4/3, C5 1")]
    [InlineData("(3c>de", "C5 1, D5 1/3, E5 2/3")]
    [InlineData("(10:8:10 c/c/c/c/c/c/c/c/c/c/|d", "C5 2/5, C5 2/5, C5 2/5, C5 2/5, C5 2/5, C5 2/5, C5 2/5, C5 2/5, C5 2/5, C5 2/5, D5 1")]
    [InlineData("(12:8:2 c/c/ d", "C5 1/3, C5 1/3, D5 1")]
    public void Tuplets_count_notes_chords_and_rests(string music, string expected) =>
        Assert.Equal(expected, AbcText.Heard(music));

    [Theory]
    [InlineData("z C x2|", "C4 1 at 1")]
    [InlineData("Z|C4|", "C4 4 at 4")]
    [InlineData("Z3|X|C4|", "C4 4 at 16")]
    [InlineData("C4|Z2|C4|", "C4 4, C4 4 at 12")]
    public void Rests(string music, string expected) => Assert.Equal(expected, AbcText.Heard(music));

    [Theory]
    [InlineData("[CEG]2 c2|", "C4 2, E4 2 at 0, G4 2 at 0, C5 2")]
    [InlineData("[GEC]2|", "C4 2, E4 2 at 0, G4 2 at 0")]
    [InlineData("[C2E]3/2 c|", "C4 3, E4 3/2 at 0, C5 1 at 3")]
    [InlineData("[CE4] c|", "C4 1, E4 1 at 0, C5 1")]
    [InlineData("[CC]2|", "C4 2")]
    [InlineData("[CE]-[CE] [C-E] C|", "C4 2, E4 2 at 0, C4 2, E4 1 at 2")]
    public void Chords_of_notes(string music, string expected) => Assert.Equal(expected, AbcText.Heard(music));

    [Theory]
    [InlineData("C2- C2|", "C4 4")]
    [InlineData("C4-|C4-|C4|", "C4 12")]
    [InlineData("C4-|[M:3/4] C3|", "C4 7")]
    [InlineData("C2-D2|", "C4 2, D4 2")]
    [InlineData("C-zC|", "C4 1, C4 1 at 2")]
    [InlineData("|: D2 C2- :| C4|", "D4 2, C4 2, D4 2, C4 6")]
    public void Ties(string music, string expected) => Assert.Equal(expected, AbcText.Heard(music));

    // ABC 2.1, section 4.11: a tie stands right behind its first note. What it leads to is heard next: where an ending is left
    // out, the first note of the next one (common practice).
    [Theory]
    [InlineData("|:C2 D2-|1 D4:|2 D4|]", "C4 2, D4 6, C4 2, D4 6")]
    [InlineData("|:C2 ^D2-|1 D4:|2 D4|]", "C4 2, D#4 6, C4 2, D#4 6")]
    [InlineData("|:C2 D2-|1 D4:|2 E4|]", "C4 2, D4 6, C4 2, D4 2, E4 4")]
    [InlineData("|:C2 D2|1 C4:|2 -D4|]", "C4 2, D4 2, C4 4, C4 2, D4 6")]
    [InlineData("|:C2 D2|1 C4:|2 -[DF]4|]", "C4 2, D4 2, C4 4, C4 2, D4 6, F4 4 at 12")]
    [InlineData("|:D2 C2|1 D4-:|2 D4|]", "D4 2, C4 2, D4 6, C4 2, D4 4")]
    [InlineData("C2- D2|", "C4 2, D4 2")]
    [InlineData("C2 .D2-'|D4|", "C4 2, D4 6")]
    [InlineData("[C-,E-]4|[CE]4|", "C4 8, E4 8 at 0")]
    public void Ties_with_one_end_and_into_endings(string music, string expected) => Assert.Equal(expected, AbcText.Heard(music));

    [Fact]
    public void A_tie_behind_a_bar_line_ties_nothing_and_is_told()
    {
        Assert.Equal("C4 4, C4 4", AbcText.Heard("C4|-C4|"));
        AbcText.AssertWarnsOf("a tie at the beginning of a bar", AbcText.Head + "C4|-C4|");
    }

    [Fact]
    public void A_tie_carries_an_accidental_over_the_bar_line_for_that_note_alone() =>
        Assert.Equal("F#4 5, F4 1", AbcText.Heard("^F4-|FF|"));

    [Theory]
    [InlineData("", "F#4 1, F#5 1, F4 1, F#4 1, F4 1")]
    [InlineData("%%propagate-accidentals pitch\n", "F#4 1, F#5 1, F4 1, F#4 1, F4 1")]
    [InlineData("%%propagate-accidentals octave\n", "F#4 1, F5 1, F4 1, F#4 1, F4 1")]
    [InlineData("I:propagate-accidentals not\n", "F#4 1, F5 1, F4 1, F#4 1, F4 1")]
    public void Accidentals_hold_to_the_bar_line(string directive, string expected) =>
        Assert.Equal(expected, AbcText.Heard(directive + "^F f =F ^F|F"));

    [Fact]
    public void An_accidental_holds_for_later_notes_of_its_bar() =>
        Assert.Equal("F#4 1, F#4 1, G4 1, F#4 1, F4 1", AbcText.Heard("^F F G F|F"));

    [Theory]
    [InlineData("{g}C2 {/gab}D2|")]
    [InlineData("(C2 (D2))|")]
    [InlineData("!trill!C2 !>!D2|")]
    [InlineData(".C2 ~D2|")]
    [InlineData("C2`D2 $|")]
    [InlineData("uC2 vD2 y2|")]
    [InlineData("TC2 .(D2)|")]
    [InlineData(".('C2 D2.)|")]
    [InlineData("(,C2 ('D2))|")]
    [InlineData("[('C]2 (D2))|")]
    [InlineData("\"^rit.\"C2 \"_pp\"D2|")]
    [InlineData("C2 % a comment\nD2|")]
    [InlineData("C2 \\\nw:kelp and weed\nD2|")]
    [InlineData("C2 [r:remark]D2 & E4|")]
    public void What_is_not_struck_is_passed_over(string music) => Assert.Equal("C4 2, D4 2", AbcText.Heard(music));

    // A '!' alone once ended a line of print; what stands between two of them is music and no decoration.
    [Theory]
    [InlineData("C2D2!|E4|!F4")]
    [InlineData("C2D2|! E4 F4!")]
    [InlineData("C2D2!\nE4|\nF4!")]
    [InlineData("C2!D2 E4!F4")]
    [InlineData("C2D2+|E4|+F4")]
    public void Lone_signs_of_old_line_ends_swallow_no_notes(string music)
    {
        Assert.Equal("C4 2, D4 2, E4 4, F4 4", AbcText.Heard(music));
        AbcText.AssertWarnsOf("alone has no meaning", AbcText.Head + music);
    }

    [Theory]
    [InlineData("C2 !fermata!D2|", "2")]
    [InlineData("C2 HD2|", "2")]
    [InlineData("C2 !invertedfermata!z2|", "2")]
    [InlineData("C4|H[CE]4|", "0")]
    public void Fermatas_are_kept(string music, string place) =>
        Assert.Equal(place, AbcText.Music(music).Bars.SelectMany(b => b.Fermatas).Single().ToString());
}
