using Revoicer.LeadSheets.Wishes;
using Revoicer.Text;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Wishes;

public sealed class WishFileTests
{
    [Fact]
    public void The_documents_example_is_read_as_it_stands()
    {
        var example = RepositoryFiles.Text("docs", "files.md").Split("## Wishes files")[1].Split("```toml\n")[1].Split("```")[0];

        var wishes = Accepted(example);

        Assert.Equal(
            [
                "bar 5 beat 1: the bass on D3",
                "bar 5 beat 1: the fifth lowest",
                "bar 16 beat 1: B5 on top in the left hand",
                "bar 16 beat 1: the figure 'rolled'",
                "bar 32: the bells G3 D5 B5 and no others",
                "bar 2: not F#3 among the bells",
                "bars 17 to 20: no rolls",
                "bars 25 to 26: no accompaniment",
            ],
            wishes.All.Select(w => w.Words));
        Assert.Equal([9], wishes.Phrases.Select(p => p.Bar));
    }

    [Fact]
    public void Every_wish_knows_its_line()
    {
        var wishes = Accepted("[[ban]]\nbar = 0\nbeat = 2.5\nbass = \"none\"\nleft-hand-top = \"none\"\nfigure = \"silent\"\n[[phrase]]\nbar = 3\n");

        Assert.Equal(
            ["4 bar 0 beat 2.5: not the feet at rest", "5 bar 0 beat 2.5: not the left hand at rest", "6 bar 0 beat 2.5: some accompaniment"],
            wishes.All.Select(w => $"{w.Where.Line} {w.Words}"));
        Assert.Equal([(3, 8)], wishes.Phrases.Select(p => (p.Bar, p.Where.Line)));
    }

    [Fact]
    public void An_empty_file_asks_for_nothing() => Assert.Equal(PlayerWishes.None, Accepted("# nothing yet\n"));

    [Fact]
    public void All_problems_are_told_at_once_in_the_order_of_the_file() => Expect(
        """
        tower = "quay"
        [[pin]]
        beat = 1
        bass = "H3"
        [[pin]]
        bar = 3
        [[ban]]
        bar = 2.5
        figure = "roled"
        [[pin]]
        bar = 4
        bells = ["G3", "G3", 5]
        lowest = "sixth"
        [pin]
        bar = 5
        """,
        """
        w.toml:1:9: 'tower' stands in no part; expected [[pin]], [[ban]], [[no-rolls]], [[leave-alone]] or [[phrase]]
            tower = "quay"
                    ^^^^^^
        w.toml:2:3: this [pin] has no line 'bar'; expected bar = ...
            [[pin]]
              ^^^
        w.toml:4:8: 'H3' is no bell; expected a note with its octave, "C4" (middle C) or "F#3"
            bass = "H3"
                   ^^^^
        w.toml:5:3: this [[pin]] asks for nothing; expected one of bass, left-hand-top, bell, bells, lowest, figure
            [[pin]]
              ^^^
        w.toml:8:7: 'bar' is 2.5; expected a whole number from 0 to 20000, the bar's number in the report
            bar = 2.5
                  ^^^
        w.toml:9:10: 'roled' is no figure; expected 'rolled', perhaps; the names are silent, together, rolled, bass first, afterbeats, broken, in tenths, as it was
            figure = "roled"
                     ^^^^^^^
        w.toml:12:16: G3 is named twice; expected every bell once
            bells = ["G3", "G3", 5]
                           ^^^^
        w.toml:12:22: an entry of 'bells' is 5; expected a text in quotes on one line, of 1 to 200 characters
            bells = ["G3", "G3", 5]
                                 ^
        w.toml:13:10: 'sixth' is no tone of a chord that may lie lowest; expected 'fifth', perhaps; the names are root, third, fifth, seventh
            lowest = "sixth"
                     ^^^^^^^
        w.toml:14:2: 'pin' is no part of a wishes file, or stands in single brackets; expected [[pin]], [[ban]], [[no-rolls]], [[leave-alone]] or [[phrase]]
            [pin]
             ^^^

        """);

    [Theory]
    [InlineData("[[pin]]\nbar = 1\nbar = 2\nbass = \"C3\"\n", "w.toml:3:1: 'bar' is given twice; expected one line for it (the first is line 2)")]
    [InlineData("[[pin]]\nbar = nan\nbass = \"C3\"\n", "w.toml:2:7: 'bar' is not a finite number; expected a whole number from 0 to 20000")]
    [InlineData("[[pin]]\nbar = 1\nbeat = inf\nbass = \"C3\"\n", "w.toml:3:8: 'beat' is not a finite number; expected a number from 1 to 64, counted in beats of the metre")]
    [InlineData("[[pin]]\nbar = 1\nvoice = 3\nbass = \"C3\"\n", "w.toml:3:1: 'voice' is no word of this part; expected one of bar, beat, bass, ")]
    [InlineData("[[pin]]\nbar = 1\nbells = []\n", "w.toml:3:9: 'bells' names none; expected at least one bell; figure = \"silent\" asks for silence")]
    [InlineData("[[no-rolls]]\nfrom = 5\nto = 4\n", "w.toml:3:6: the passage ends in bar 4, before it begins in bar 5; expected a last bar not before the first")]
    [InlineData("[[leave-alone]]\nfrom = 5\n", "w.toml:1:3: this [leave-alone] has no line 'to'; expected to = ...")]
    [InlineData("[[phrase]]\nbeat = 5\n", "w.toml:1:3: this [phrase] has no line 'bar'; expected bar = ...")]
    [InlineData("[[pin]\n", "w.toml:1:")]
    public void What_is_wrong_is_told_with_its_place(string text, string sentence) =>
        Assert.StartsWith(sentence, string.Concat(Refused(text)), StringComparison.Ordinal);

    [Fact]
    public void More_wishes_than_a_sheet_has_chords_are_refused()
    {
        var text = string.Concat(Enumerable.Repeat("[[pin]]\nbar = 1\nbass = \"C3\"\n", 1001));
        Assert.StartsWith("w.toml:3003:8: this is wish 1001; expected at most 1000 wishes\n", string.Concat(Refused(text)), StringComparison.Ordinal);
    }

    private static PlayerWishes Accepted(string text) => Assert.IsType<Reading<PlayerWishes>.Accepted>(Read(text)).Value;

    private static IEnumerable<Problem> Refused(string text) => Assert.IsType<Reading<PlayerWishes>.Refused>(Read(text)).Problems;

    private static void Expect(string text, string sentences) => Assert.Equal(sentences, string.Concat(Refused(text)));

    private static Reading<PlayerWishes> Read(string text) => WishFile.Read("w.toml", text, FigureNames.All);
}
