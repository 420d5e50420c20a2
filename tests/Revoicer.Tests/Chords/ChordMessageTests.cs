using Revoicer.Chords;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Chords;

/// <summary>The sentences a musician sees, whole.</summary>
public class ChordMessageTests
{
    [Theory]
    [InlineData("C7b15", """
        sheet:1:4: '15' is no degree; expected a degree from 2 to 13
            C7b15
               ^^

        """)]
    [InlineData("C7xyz", """
        sheet:1:3: 'xyz' cannot be read; expected an alteration such as b9, or sus, add, omit, or a slash and a bass note
            C7xyz
              ^^^

        """)]
    [InlineData("Cmjr7", """
        sheet:1:3: 'jr7' cannot be read; expected an alteration such as b9, or sus, add, omit, or a slash and a bass note
            Cmjr7
              ^^^

        """)]
    [InlineData("C7(b9", """
        sheet:1:3: '(' has no end; expected a ')' after it
            C7(b9
              ^

        """)]
    [InlineData("C7b9)", """
        sheet:1:5: ')' closes no bracket; expected a '(' before it
            C7b9)
                ^

        """)]
    [InlineData("C/H", """
        sheet:1:3: 'H' is no bass note; expected a letter from A to G, perhaps with # or b
            C/H
              ^

        """)]
    [InlineData("C/", """
        sheet:1:2: '/' ends the symbol; expected a bass note from A to G after it
            C/
             ^

        """)]
    [InlineData("C79", """
        sheet:1:2: '79' is no number of a chord; expected 2, 5, 6, 69, 7, 9, 11 or 13
            C79
             ^^

        """)]
    [InlineData("G4", """
        sheet:1:2: '4' can mean several chords here; expected 'sus4' or 'add4'
            G4
             ^

        """)]
    [InlineData("Cdimb9", """
        sheet:1:5: 'b9' stands on a chord without a seventh; expected '7b9' or 'addb9'
            Cdimb9
                ^^

        """)]
    [InlineData("F7b3", """
        sheet:1:3: 'b3' is no alteration of a chord; expected b5, #5, b6, b9, #9, #11 or b13
            F7b3
              ^^

        """)]
    [InlineData("Csus9", """
        sheet:1:2: 'sus9' can mean several chords; expected 'sus2', 'sus4', or a number before it as in '9sus4'
            Csus9
             ^^^^

        """)]
    [InlineData("C(7)", """
        sheet:1:3: '7' in brackets can be part of the chord or an alternative; expected the number without brackets, or 'add' before it
            C(7)
              ^

        """)]
    [InlineData("Csus4(no3)", """
        sheet:1:9: the chord has no 3 to leave out; expected a tone of the chord
            Csus4(no3)
                    ^

        """)]
    [InlineData("Am7maj7", """
        sheet:1:4: 'maj7' is a second seventh; expected one seventh
            Am7maj7
               ^^^^

        """)]
    [InlineData("C ,add9", """
        sheet:1:3: ',' stands between nothing; expected an alteration on either side of it
            C ,add9
              ^

        """)]
    [InlineData("C7(,b9)", """
        sheet:1:4: ',' stands between nothing; expected an alteration on either side of it
            C7(,b9)
               ^

        """)]
    [InlineData("Dadd", """
        sheet:1:4: the symbol ends too early; expected a degree from 2 to 13
            Dadd
               ^

        """)]
    [InlineData("CmM", """
        sheet:1:3: the symbol ends too early; expected 7, 9, 11 or 13 after 'maj'
            CmM
              ^

        """)]
    [InlineData("H7", """
        sheet:1:1: 'H7' is no chord here; expected a root from A to G (B where German charts write H)
            H7
            ^^

        """)]
    [InlineData("em7", """
        sheet:1:1: 'em7' begins with a small letter, which can be a chord or a single note; expected a root in capitals: 'Em7'
            em7
            ^^^

        """)]
    [InlineData("A b9", """
        sheet:1:3: 'b9' stands apart from its root; expected the accidental next to the letter, or the alteration in brackets
            A b9
              ^^

        """)]
    [InlineData("(D", """
        sheet:1:1: '(' before the chord has no end; expected a ')' after it
            (D
            ^

        """)]
    [InlineData("B\uE10Dmaj7", """
        sheet:1:2: 'U+E10Dmaj7' cannot be read; expected '#' or 'b' in place of a sign that only one font has
            B#maj7
             ^^^^^

        """)]
    [InlineData("A\u266E7", """
        sheet:1:2: a natural sign after the letter of a note says nothing; expected 'A7'
            A\u266E7
             ^

        """)]
    [InlineData("A\uE2617", """
        sheet:1:2: a natural sign after the letter of a note says nothing; expected 'A7'
            A\uE2617
             ^

        """)]
    [InlineData("Dm/F\u266E", """
        sheet:1:5: a natural sign after the letter of a note says nothing; expected 'Dm/F'
            Dm/F\u266E
                ^

        """)]
    [InlineData("G/dim", """
        sheet:1:3: 'dim' stands where the bass note belongs; expected 'Gdim', or a bass note from A to G
            G/dim
              ^^^

        """)]
    [InlineData("C7/add", """
        sheet:1:4: 'add' stands where the bass note belongs; expected a bass note from A to G
            C7/add
               ^^^

        """)]
    [InlineData("F5b5", """
        sheet:1:3: 'b5' alters the fifth that '5' asks for; expected 'F(b5)' for the triad, or 'F5' for root and fifth
            F5b5
              ^^

        """)]
    public void A_refusal_says_where_what_and_what_would_be_right(string text, string message) =>
        Assert.Equal(
        message.Replace("B#maj7", "B\uE10Dmaj7", StringComparison.Ordinal).Replace("\\u266E", "\u266E", StringComparison.Ordinal).Replace("\\uE261", "\uE261", StringComparison.Ordinal),
        SymbolText.Messages(text));

    [Fact]
    public void The_place_counts_from_where_the_text_stands()
    {
        var line = "X: \"  C7b15\"";
        var reading = ChordSymbolReader.Read("  C7b15", new Place("tune.abc", 4, 5, 7, line));
        var refused = Assert.IsType<Reading<ChordText>.Refused>(reading);
        Assert.Equal((4, 10, 2), (refused.Problems[0].Where.Line, refused.Problems[0].Where.Column, refused.Problems[0].Where.Length));
    }

    [Fact]
    public void A_symbol_of_any_length_ends_in_a_short_sentence()
    {
        var refused = Assert.IsType<Reading<ChordText>.Refused>(SymbolText.Read("C7" + new string('q', 100_000)));
        Assert.Equal("'qqqqqqqqqqqqqqqqqqqqqqqq...' cannot be read", refused.Problems[0].Found);
        Assert.IsType<Reading<ChordText>.Refused>(SymbolText.Read("C7" + string.Concat(Enumerable.Repeat("b9", 50_000))));
    }
}
