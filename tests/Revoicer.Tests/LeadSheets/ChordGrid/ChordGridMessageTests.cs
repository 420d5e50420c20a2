using Revoicer.LeadSheets;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.ChordGrid;

/// <summary>The sentences a musician sees, whole.</summary>
public class ChordGridMessageTests
{
    [Theory]
    [InlineData("| C F G |", """
        quay.chords:2:3: 3 chords in a bar of 4 beats; expected 'C / F G' or 'C F / G' or 'C F G /'
            | C F G |
              ^^^^^

        """)]
    [InlineData("| C F G Am Dm |", """
        quay.chords:2:3: 5 chords in a bar of 4 beats; expected at most one chord a beat
            | C F G Am Dm |
              ^^^^^^^^^^^

        """)]
    [InlineData("| C | | G |", """
        quay.chords:2:7: an empty bar before this bar line; expected chords, '%' for the bar before once more, or 'N.C.'
            | C | | G |
                  ^

        """)]
    [InlineData("| C | / G |", """
        quay.chords:2:7: '/' has no chord before it in its bar; expected a chord symbol
            | C | / G |
                  ^

        """)]
    [InlineData("| % | G |", """
        quay.chords:2:3: '%' has no bar before it; expected chords
            | % | G |
              ^

        """)]
    [InlineData("|: C |[1 G :|[2 % |]", """
        quay.chords:2:17: '%' begins a second ending, before which two bars can stand; expected its chords
            |: C |[1 G :|[2 % |]
                            ^

        """)]
    [InlineData("pickup: 2\n| C | % |", """
        quay.chords:3:7: '%' after a bar of another length; expected its chords
            | C | % |
                  ^

        """)]
    [InlineData("|: C :|[3 G |]", """
        quay.chords:2:8: '[3' is no ending; expected '[1' or '[2': a repeat has at most two endings
            |: C :|[3 G |]
                   ^^

        """)]
    [InlineData("|: C |[12 G :| F |]", """
        quay.chords:2:7: '[12' is no ending; expected '[1' or '[2': a repeat has at most two endings
            |: C |[12 G :| F |]
                  ^^^

        """)]
    [InlineData("| C |[3", """
        quay.chords:2:6: '[3' is no ending; expected '[1' or '[2': a repeat has at most two endings
            | C |[3
                 ^^
        quay.chords:2:6: the line does not end with a bar line; expected '|' after it
            | C |[3
                 ^^

        """)]
    [InlineData("| C | G [1 |", """
        quay.chords:2:9: an ending begins inside a bar; expected it right after a bar line
            | C | G [1 |
                    ^^

        """)]
    [InlineData("| C |:", """
        quay.chords:2:5: a repeat begins with no bar after it; expected a bar, and ':|' at the repeat's end
            | C |:
                ^^

        """)]
    [InlineData(":| C |", """
        quay.chords:2:1: a repeat ends with no bar before it; expected a bar before it
            :| C |
            ^^

        """)]
    [InlineData("| C | % G |", """
        quay.chords:2:7: '%' stands with other chords; expected '%' alone in its bar, or '/' for a beat
            | C | % G |
                  ^

        """)]
    [InlineData("| C | (E7) |", """
        quay.chords:2:7: a chord in brackets is not played; expected 'E7', or the alternate in a comment
            | C | (E7) |
                  ^^^^

        """)]
    [InlineData("| C | Fine |", """
        quay.chords:2:7: 'Fine' is no chord; expected a chord symbol such as C, F#m7 or Bb/D, N.C., '/' or '%'
            | C | Fine |
                  ^^^^

        """)]
    [InlineData("C | G |", """
        quay.chords:2:1: the line does not begin with a bar line; expected '|'
            C | G |
            ^

        """)]
    [InlineData("| C | G", """
        quay.chords:2:7: the line does not end with a bar line; expected '|' after it
            | C | G
                  ^

        """)]
    [InlineData("|: C | G |", """
        quay.chords:2:1: a repeat without an end; expected ':|' at its end
            |: C | G |
            ^^

        """)]
    [InlineData("|: C |: G :|", """
        quay.chords:2:6: a repeat begins inside a repeat; expected ':|' before it
            |: C |: G :|
                 ^^

        """)]
    [InlineData("| C |[2 G |", """
        quay.chords:2:6: a second ending without a first; expected a first ending '[1' that ends with ':|'
            | C |[2 G |
                 ^^

        """)]
    [InlineData("|: C |[1 G :| F |", """
        quay.chords:2:7: a first ending without a second; expected '[2' after its ':|'
            |: C |[1 G :| F |
                  ^^

        """)]
    [InlineData("|: C |[1 G :|[2 F :|", """
        quay.chords:2:14: a repeat ends after a second ending without having begun; expected '|:' where it begins
            |: C |[1 G :|[2 F :|
                         ^^

        """)]
    [InlineData("Hello there", """
        quay.chords:2:1: a line without a bar line; expected bars between '|', or 'word: value' at the head
            Hello there
            ^^^^^^^^^^^

        """)]
    [InlineData("", "quay.chords: no bars; expected bars between '|' after the head\n")]
    public void A_refusal_says_where_what_and_what_would_be_right(string bars, string message) =>
        Assert.Equal(message, Grid.Messages("time: 4/4\n" + bars));

    [Theory]
    [InlineData("tittle: Kelp", """
        quay.chords:1:1: 'tittle' is no word of the head; expected 'title'
            tittle: Kelp
            ^^^^^^

        """)]
    [InlineData("composer: me", """
        quay.chords:1:1: 'composer' is no word of the head; expected one of title, key, time, tempo, pickup
            composer: me
            ^^^^^^^^

        """)]
    [InlineData("time: 5/4", """
        quay.chords:1:7: '5/4' is no time that can be read; expected one of 2/4, 3/4, 4/4, 6/8, 9/8, 12/8, 2/2
            time: 5/4
                  ^^^

        """)]
    [InlineData("time: 4/4\ntempo: 301", """
        quay.chords:2:8: '301' is no tempo that can be read; expected a number from 20 to 300, the beats a minute
            tempo: 301
                   ^^^

        """)]
    [InlineData("time: 4/4\nkey: H", """
        quay.chords:2:6: 'H' is no key that can be read; expected a key such as G, 'Bb major' or 'F# minor', of at most seven sharps or flats
            key: H
                 ^

        """)]
    [InlineData("time: 4/4\npickup: 4", """
        quay.chords:2:9: '4' is no pickup that can be read; expected a whole number from 1 to 3, the beats of the first bar
            pickup: 4
                    ^

        """)]
    [InlineData("time: 5/4\ntempo: fast\npickup: 4", """
        quay.chords:1:7: '5/4' is no time that can be read; expected one of 2/4, 3/4, 4/4, 6/8, 9/8, 12/8, 2/2
            time: 5/4
                  ^^^
        quay.chords:2:8: 'fast' is no tempo that can be read; expected a number from 20 to 300, the beats a minute
            tempo: fast
                   ^^^^
        quay.chords:3:9: '4' is no pickup that can be read; expected a whole number from 1 to 3, the beats of the first bar
            pickup: 4
                    ^

        """)]
    [InlineData("time: 5/4\ntempo: 96\npickup: 3", """
        quay.chords:1:7: '5/4' is no time that can be read; expected one of 2/4, 3/4, 4/4, 6/8, 9/8, 12/8, 2/2
            time: 5/4
                  ^^^

        """)]
    [InlineData("time: 4/4\ntime: 3/4", """
        quay.chords:2:1: 'time' stands here a second time; expected each word of the head once
            time: 3/4
            ^^^^

        """)]
    [InlineData("time: 4/4\ntempo:", """
        quay.chords:2:1: 'tempo' has no value; expected 'tempo: 96'
            tempo:
            ^^^^^

        """)]
    public void The_head_is_refused_where_it_is_wrong(string head, string message) =>
        Assert.Equal(message, Grid.Messages(head + "\n| C |\n"));

    [Fact]
    public void All_problems_of_a_file_come_at_once_in_order_of_place()
    {
        const string Text = """
            tme: 3/4
            | C7b15 | G |
            | F | H7 | Cove
            key: G
            """;
        Assert.Equal(
            """
            quay.chords:1:1: 'tme' is no word of the head; expected 'time'
                tme: 3/4
                ^^^
            quay.chords:2:6: '15' is no degree; expected a degree from 2 to 13
                | C7b15 | G |
                     ^^
            quay.chords:3:7: 'H7' is no chord here; expected a root from A to G (B where German charts write H)
                | F | H7 | Cove
                      ^^
            quay.chords:3:12: the line does not end with a bar line; expected '|' after it
                | F | H7 | Cove
                           ^^^^
            quay.chords:3:12: 'Cove' is no chord; expected a chord symbol such as C, F#m7 or Bb/D, N.C., '/' or '%'
                | F | H7 | Cove
                           ^^^^
            quay.chords:4:1: a line of the head after the first bar; expected it above the first bar; one time and key hold for the whole sheet
                key: G
                ^^^^^^

            """,
            Grid.Messages(Text));
    }

    [Fact]
    public void Warnings_of_chords_come_with_the_sheet()
    {
        Assert.Equal(
            "quay.chords:2:5: the bass 'f+' is taken as F#; expected 'F#'\n    | D/f+ |\n        ^^\n",
            Grid.Messages("time: 4/4\n| D/f+ |"));
    }

    [Theory]
    [InlineData("|", 400_000)]
    [InlineData("| C ", 240_000)]
    [InlineData("|C|\n", 250_000)]
    [InlineData("|:C:|\n", 15_000)]
    [InlineData("x\n", 500_000)]
    [InlineData("(", 1_000_000)]
    [InlineData("| C |[1", 100_000)]
    [InlineData("time: 4/4\n", 100_000)]
    [InlineData("| ? |\n", 150_000)]
    [InlineData("x", 1_048_577)]
    public void Huge_input_is_refused_with_at_most_a_hundred_problems_and_a_word(string piece, int times)
    {
        var refused = Assert.IsType<Reading<LeadSheet>.Refused>(Grid.Read("time: 4/4\n" + string.Concat(Enumerable.Repeat(piece, times))));
        Assert.InRange(refused.Problems.Count, 1, 101);
    }
}
