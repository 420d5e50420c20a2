using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.ChordGrid;

public class ChordGridReaderTests
{
    [Fact]
    public void The_head_gives_title_key_time_tempo_and_pickup()
    {
        var sheet = Grid.Sheet("""
            # a comment
            title: Fog over F# Pier   # F# survives
            key: Bb minor
            time: 6/8
            tempo: 56.5
            pickup: 1

            | F#7 | Bbm | Ebm F7 |]
            """);
        Assert.Equal("Fog over F# Pier", sheet.Title);
        Assert.Equal(new KeySignature(new NoteName(Letter.B, -1), Mode.Minor), sheet.Key);
        Assert.Equal(new Tempo(Beats.OfQuarters(3, 2), 56.5), sheet.Tempo);
        Assert.Equal([0, 1, 2], sheet.Bars.Select(b => b.Number));
        Assert.Equal("F#7 3/2 at 0", Grid.Spans(sheet.Bars[0]));
        Assert.Equal("Ebm 3/2 at 0, F7 3/2 at 3/2", Grid.Spans(sheet.Bars[2]));
        Assert.Equal(Beats.OfQuarters(15, 2), sheet.Length);
    }

    [Fact]
    public void What_the_head_leaves_out_stays_open_and_a_missing_time_is_told()
    {
        var sheet = Grid.Sheet("| C |");
        Assert.Equal(("quay", null, null), (sheet.Title, sheet.Key, sheet.Tempo));
        Assert.Equal("quay.chords: no time is given, 4/4 is taken; expected 'time: 4/4' at the head\n", Grid.Messages("| C |"));
    }

    [Theory]
    [InlineData("4/4", "| C |", "C 4 at 0")]
    [InlineData("4/4", "| C G7 |", "C 2 at 0, G7 2 at 2")]
    [InlineData("4/4", "| C / / G7 |", "C 3 at 0, G7 1 at 3")]
    [InlineData("4/4", "| C Am Dm G7 |", "C 1 at 0, Am 1 at 1, Dm 1 at 2, G7 1 at 3")]
    [InlineData("4/4", "| C / N.C. / |", "C 2 at 0, N.C. 2 at 2")]
    [InlineData("3/4", "| C / G7 |", "C 2 at 0, G7 1 at 2")]
    [InlineData("2/4", "| C G7 |", "C 1 at 0, G7 1 at 1")]
    [InlineData("6/8", "| C G7 |", "C 3/2 at 0, G7 3/2 at 3/2")]
    [InlineData("9/8", "| C / G7 |", "C 3 at 0, G7 3/2 at 3")]
    [InlineData("12/8", "| C G7 |", "C 3 at 0, G7 3 at 3")]
    [InlineData("2/2", "| C G7 |", "C 2 at 0, G7 2 at 2")]
    [InlineData("4/4", "|C7(b9, #11) F#m7|", "C7(b9, #11) 2 at 0, F#m7 2 at 2")]
    public void Chords_share_a_bar(string time, string bar, string spans) =>
        Assert.Equal(spans, Grid.Spans(Grid.Bars(time, bar).Bars[0]));

    [Fact]
    public void A_percent_sign_is_the_bar_before_once_more()
    {
        var bars = Grid.Bars("4/4", "| C G7 | % | % |").Bars;
        Assert.Equal("C 2 at 0, G7 2 at 2", Grid.Spans(bars[2]));
        Assert.Equal(14, bars[2].Chords[1].Where.Column);
    }

    [Theory]
    [InlineData("| C | F |", "1 2")]
    [InlineData("|: C | F :| G |", "1 2 1(2) 2(2) 3")]
    [InlineData("| C | F :| G |", "1 2 1(2) 2(2) 3")]
    [InlineData("|: C :| G :| F |", "1 1(2) 2 2(2) 3")]
    [InlineData("|: C :|: G :|", "1 1(2) 2 2(2)")]
    [InlineData("|: C :: G :|", "1 1(2) 2 2(2)")]
    [InlineData("|: C |[1 F :|[2 G | Am |]", "1 2 1(2) 3 4")]
    [InlineData("|: C |\n|[1 F | Dm :|\n|[2 G |]\n|: Am :|", "1 2 3 1(2) 4 5 5(2)")]
    [InlineData("| C |: F | G | [1 F :| [2 G |]", "1 2 3 4 2(2) 3(2) 5")]
    public void Repeats_unfold(string bars, string heard) => Assert.Equal(heard, Grid.Heard(bars));

    [Fact]
    public void Heard_bars_follow_each_other_without_a_gap()
    {
        var sheet = Grid.Sheet("time: 3/4\npickup: 1\n|: D7 | G | C :|\n");
        Assert.Equal([0, 1, 4, 7, 8, 11], sheet.Played.Select(p => (int)p.Start.Quarters));
        Assert.Equal(Beats.OfQuarters(14), sheet.Length);
    }

    [Fact]
    public void Double_bars_repeats_and_the_end_end_a_section()
    {
        var bars = Grid.Bars("4/4", "| C | F || G |: Am :| C | F |] G |\n|: C :|").Bars;
        Assert.Equal([false, true, true, true, false, true, true, true], bars.Select(b => b.EndsSection));
    }

    [Fact]
    public void All_line_ends_are_lines()
    {
        var sheet = Grid.Sheet("\uFEFFtime: 3/4\r\ntitle: Kelp\r| C |\n| G |");
        Assert.Equal(("Kelp", 2), (sheet.Title, sheet.Bars.Count));
    }

    [Fact]
    public void The_example_of_the_document_reads_without_a_warning()
    {
        var example = RepositoryFiles.Text("docs", "files.md").Split("```\n")[1];
        var accepted = Assert.IsType<Reading<LeadSheet>.Accepted>(Grid.Read(example));
        Assert.Empty(accepted.Warnings);
        Assert.Equal((11, 14), (accepted.Value.Bars.Count, accepted.Value.Played.Count));
    }

    [Theory]
    [InlineData("lamps-on-the-quay.chords", 17, 24)]
    [InlineData("ferry-waltz.chords", 33, 33)]
    public void The_demo_sheets_read_without_a_warning(string name, int written, int heard)
    {
        var text = RepositoryFiles.Text("leadsheets-demo", name);
        var accepted = Assert.IsType<Reading<LeadSheet>.Accepted>(Grid.Read(text));
        Assert.Empty(accepted.Warnings);
        Assert.Equal((written, heard), (accepted.Value.Bars.Count, accepted.Value.Played.Count));
    }
}
