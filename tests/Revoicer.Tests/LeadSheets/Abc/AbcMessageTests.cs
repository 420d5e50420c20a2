using Revoicer.LeadSheets;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

/// <summary>The sentences a musician sees, whole.</summary>
public class AbcMessageTests
{
    [Theory]
    [InlineData("C D Q E|", """
        quay.abc:6:5: 'Q' is no music code; expected a note, rest, bar line, chord symbol in quotation marks or sign of the ABC standard
            C D Q E|
                ^

        """)]
    [InlineData("C2 ^ D|", """
        quay.abc:6:4: '^' is no note; expected a letter from A to G behind ^, = or _
            C2 ^ D|
               ^

        """)]
    [InlineData("[C E4|", """
        quay.abc:6:1: '[' without ']'; expected ']' after the last note of the chord
            [C E4|
            ^^^^^

        """)]
    [InlineData("[C E z Q", """
        quay.abc:6:1: '[' without ']'; expected ']' after the last note of the chord
            [C E z Q
            ^^^^^^^^

        """)]
    [InlineData("[C z [E G]|", """
        quay.abc:6:1: '[' without ']'; expected ']' after the last note of the chord
            [C z [E G]|
            ^^^^^

        """)]
    [InlineData("C4 2 D2|", """
        quay.abc:6:4: '2' is no music code; expected a note, rest, bar line, chord symbol in quotation marks or sign of the ABC standard
            C4 2 D2|
               ^

        """)]
    [InlineData("A> | B|", """
        quay.abc:6:2: broken rhythm with no note after it in the bar; expected a note or rest before the bar line
            A> | B|
             ^

        """)]
    [InlineData("(3A(3BCD|", """
        quay.abc:6:4: a tuplet begins inside a tuplet; expected the notes of the one before it first
            (3A(3BCD|
               ^^

        """)]
    [InlineData("(10CCCC|", """
        quay.abc:6:1: '(10' is no tuplet; expected '(p' with p from 2 to 9, or '(p:q:r' with numbers up to 64
            (10CCCC|
            ^^^

        """)]
    [InlineData("C4|2D4|", """
        quay.abc:6:4: an ending for a later time, with no repeat before it; expected a first ending that ends with ':|'
            C4|2D4|
               ^

        """)]
    [InlineData("C4 \"G7|", """
        quay.abc:6:4: a quotation mark without its other; expected '"' after the chord symbol or text
            C4 "G7|
               ^^^^

        """)]
    [InlineData("C4 [K:X]|", """
        quay.abc:6:7: 'X' is no key; expected a key such as G, Am, Bb or D mix, or none
            C4 [K:X]|
                  ^

        """)]
    [InlineData("A0 A/5|", """
        quay.abc:6:2: '0' is no length of a note; expected such as 2, /, 3/2; numbers from 1 to 4096
            A0 A/5|
             ^

        """)]
    public void Music_that_cannot_be_read(string music, string expected)
    {
        Assert.IsType<Reading<LeadSheet>.Refused>(AbcText.Read(AbcText.Head + music));
        Assert.Equal(expected, AbcText.Messages(AbcText.Head + music));
    }

    [Theory]
    [InlineData("", "quay.abc: the file has no tune; ")]
    [InlineData("T:Kelp\nK:C\nC8|", "quay.abc: the file has no tune; ")]
    [InlineData("X:1\nT:Kelp\n", "quay.abc:2:1: the tune ends before its key; ")]
    [InlineData("X:1\nM:4/4\n\nK:C\nC8|", "quay.abc:2:1: the tune ends before its key; ")]
    [InlineData("X:1\nM:4/4\nK:C\n", "quay.abc:3:1: the tune has no notes; ")]
    [InlineData("X:1\nM:4/4\nC8|\nK:C\nC8|", "quay.abc:3:1: 'C8|' at the head of a tune; ")]
    [InlineData("X:1\nM:4/5\nK:C\nC8|", "quay.abc:2:3: '4/5' is no metre; ")]
    [InlineData("X:1\nM:4/4\nL:1/3\nK:C\nC8|", "quay.abc:3:3: '1/3' is no unit of length; ")]
    [InlineData("X:1\nM:4/4\nQ:fast\nK:C\nC8|", "quay.abc:3:3: 'fast' is no speed; ")]
    [InlineData("X:1\nM:4/4\nQ:1/4=9999\nK:C\nC8|", "quay.abc:3:3: '1/4=9999' is no speed; ")]
    [InlineData("X:1\nM:4/4\nK:G#\nC8|", "quay.abc:3:3: a key of 8 sharps; ")]
    [InlineData("X:1\nM:4/4\nK:D blues\nC8|", null)]
    [InlineData("X:1\nM:4/4\nK:Dblues\nC8|", "quay.abc:3:3: 'Dblues' is no key; ")]
    [InlineData("X:1\nP:AB\nM:4/4\nK:C\nP:A\nC8|", "quay.abc:2:3: the tune has no part 'B'; ")]
    [InlineData("X:1\nP:A)\nM:4/4\nK:C\nP:A\nC8|", "quay.abc:2:3: 'A)' is no order of parts; ")]
    [InlineData("X:1\nP:A0\nM:4/4\nK:C\nP:A\nC8|", "quay.abc:2:3: 'A0' is no order of parts; ")]
    [InlineData("X:1\nM:4/4\nK:C\n%%begintext\nC8|", "quay.abc:4:1: '%%begintext' without an end; ")]
    [InlineData("X:1\nM:4/4\nK:C\n:|C8|", "quay.abc:4:1: a repeat ends with no bar before it; ")]
    [InlineData("X:1\nM:4/4\nK:C\nC,,,,,,,,8|", "quay.abc:4:1: a note outside the range of notes; ")]
    [InlineData("X:1\nM:none\nK:C\nZ|C8|", "quay.abc:4:1: a rest of whole bars in free metre; ")]
    [InlineData("X:1\nM:4/4\nK:C\n-C8|", "quay.abc:4:1: a tie with no note before it; ")]
    [InlineData("X:1\nM:4/4\nK:C\n\"C7b15\"C8|", "quay.abc:4:5: ")]
    [InlineData("X:1\nM:4/4\nK:C\nC/1024|", "quay.abc:4:1: a note of 1/2048 quarters; ")]
    public void Files_that_cannot_be_read(string text, string? expected)
    {
        Assert.Equal(expected is not null, AbcText.IsRefused(text));
        Assert.StartsWith(expected ?? "quay.abc:3:5: 'blues' is not known here", AbcText.Messages(text), StringComparison.Ordinal);
    }

    [Fact]
    public void All_problems_are_told_at_once_and_in_order()
    {
        var reading = AbcText.Read(AbcText.Head + "C Q D|\nA0 [K:X]|\n\"C7b15\"C R|");

        Assert.Equal(
            [(6, 3), (7, 2), (7, 7), (8, 5), (8, 10)],
            Assert.IsType<Reading<LeadSheet>.Refused>(reading).Problems.Select(p => (p.Where.Line, p.Where.Column)));
    }

    [Theory]
    [InlineData(1, "at most 1048576")]
    [InlineData(2, "a line of 5000 characters")]
    [InlineData(3, "more bars than one sheet may have")]
    [InlineData(4, "more bars than one sheet may have")]
    [InlineData(5, "more bars than one sheet may have")]
    [InlineData(6, "a piece of 102400 quarters")]
    [InlineData(7, "a bar of more than 1000 quarters")]
    [InlineData(8, "more such places follow")]
    public void Huge_files_are_refused(int kind, string expected)
    {
        var text = kind switch
        {
            1 => new string('C', (1 << 20) + 1),
            2 => AbcText.Head + new string('C', 5000),
            3 => AbcText.Head + "Z4096|Z4096|Z4096|Z4096|Z4096|",
            4 => "X:1\nP:((A999)999)9\nM:4/4\nL:1/4\nK:C\nP:A\nC4|",
            5 => AbcText.Head + "|::::::::: Z4096|Z4096|C4 :|",
            6 => AbcText.Head + string.Concat(Enumerable.Repeat("C256|", 400)),
            7 => AbcText.Head + "C256C256C256C256|",
            _ => AbcText.Head + string.Concat(Enumerable.Repeat("Q\n", 300)),
        };

        Assert.True(AbcText.IsRefused(text));
        Assert.Contains(expected, AbcText.Messages(text), StringComparison.Ordinal);
    }
}
