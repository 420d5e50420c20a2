using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

public class AbcFieldTests
{
    // Section 3.1.7 of the ABC standard 2.1: below 0.75 a sixteenth, else an eighth.
    [Theory]
    [InlineData("2/4", "1/4")]
    [InlineData("3/4", "1/2")]
    [InlineData("6/8", "1/2")]
    [InlineData("5/8", "1/4")]
    [InlineData("C|", "1/2")]
    [InlineData("none", "1/2")]
    public void Without_a_unit_the_metre_gives_one(string meter, string length) =>
        Assert.Equal($"C4 {length}", AbcText.Heard(AbcText.Sheet($"X:1\nM:{meter}\nK:C\nC|")));

    [Theory]
    [InlineData("C", "4/4")]
    [InlineData("C|", "2/2")]
    [InlineData("6/8", "6/8")]
    [InlineData("4/1", "8/2")]
    [InlineData("2+3/8", "5/8")]
    [InlineData("(2+2+3)/8", "7/8")]
    public void Metres(string field, string expected) =>
        Assert.Equal(expected, AbcText.Sheet($"X:1\nM:{field}\nK:C\nC|").Bars[0].Meter.ToString());

    [Theory]
    [InlineData("1/4=96", 96)]
    [InlineData("1/2=60", 120)]
    [InlineData("3/8=80", 120)]
    [InlineData("\"Allegro\" 1/4=120", 120)]
    [InlineData("1/4=120 \"Allegro\"", 120)]
    [InlineData("1/4 3/8 1/4 3/8=40", 200)]
    [InlineData("96", 48)]
    [InlineData("C=96", 48)]
    [InlineData("C3=40", 60)]
    public void Speeds_in_quarters_a_minute(string field, double expected)
    {
        var sheet = AbcText.Sheet($"X:1\nM:4/4\nL:1/8\nQ:{field}\nK:C\nC8|");

        Assert.Equal(expected, sheet.Tempo!.Value.QuartersPerMinute);
    }

    [Fact]
    public void Words_alone_are_no_speed_and_told()
    {
        const string Text = "X:1\nM:4/4\nQ:\"Allegro\"\nK:C\nC8|";

        Assert.Null(AbcText.Sheet(Text).Tempo);
        AbcText.AssertWarnsOf("names no speed", Text);
    }

    [Fact]
    public void A_speed_at_the_start_is_the_sheets_and_later_ones_belong_to_their_bar()
    {
        var sheet = AbcText.Sheet("X:1\nM:4/4\nL:1/4\nQ:1/4=60\nK:C\n[Q:1/4=100]C4|D2[Q:1/4=80]D2|\nQ:1/4=50\nE4|");

        Assert.Equal(100, sheet.Tempo!.Value.PerMinute);
        Assert.Equal(
            [(1, "2", 80.0), (2, "0", 50.0)],
            sheet.Bars.Index().SelectMany(b => b.Item.Tempi.Select(t => (b.Index, t.From.ToString(), t.Tempo.PerMinute))));
    }

    [Theory]
    [InlineData("[L:1/8]C2|\nL:1/2\nC|", "C4 1, C4 2")]
    [InlineData("[M:3/4]C3|", "C4 3")]
    [InlineData("C2[K:D]C2|", "C4 2, C#4 2")]
    public void Fields_change_inside_a_tune(string music, string expected) => Assert.Equal(expected, AbcText.Heard(music));

    [Theory]
    [InlineData(null, "C4 4, D4 4, E4 4")]
    [InlineData("T", "C4 4, D4 4, E4 4")]
    [InlineData("Treble", "C4 4, D4 4, E4 4")]
    [InlineData("B", "C3 4, D3 4, E3 4")]
    public void One_voice_is_read(string? voice, string expected) => Assert.Equal(expected, AbcText.Heard(AbcText.Sheet(
        "X:1\nM:4/4\nL:1/4\nV:T name=\"Treble\"\nV:B clef=bass\nK:C\nV:T\nC4|\n[V:B]C,4|[V:T]D4|\nV:B\nD,4|E,4|\nV:T\nE4|",
        new SheetChoice(Voice: voice))));

    [Fact]
    public void Fields_of_another_voice_do_not_touch_the_tune() => Assert.Equal(
        "F4 4, F4 4",
        AbcText.Heard(AbcText.Sheet("X:1\nM:4/4\nL:1/4\nK:C\nV:1\nF4|\nV:2\nK:G\nL:1/8\nF8|\nV:1\nF4|")));

    [Fact]
    public void A_wrong_voice_is_refused_with_those_there_are() => Assert.Contains(
        "the tune has no voice 'X'; expected one of its voices: 1, 2",
        AbcText.Messages("X:1\nM:4/4\nK:C\nV:1\nC8|\nV:2\nC8|", new SheetChoice(Voice: "X")));

    private const string Book = "L:1/4\nM:4/4\n\nX:7\nT:One\nK:C\nC4|\n\nX:3\nT:Two\nK:C\nD4|\n\nX:3\nT:Three\nK:C\nE4|\n";

    [Theory]
    [InlineData(null, "One", "C4 4")]
    [InlineData(7, "One", "C4 4")]
    [InlineData(3, "Two", "D4 4")]
    public void A_tune_is_chosen_by_its_number(int? piece, string title, string heard)
    {
        var sheet = AbcText.Sheet(Book, new SheetChoice(Piece: piece));

        Assert.Equal((title, heard), (sheet.Title, AbcText.Heard(sheet)));
    }

    [Fact]
    public void The_first_of_several_tunes_is_told() => AbcText.AssertWarnsOf("the file has 3 tunes", Book);

    [Fact]
    public void A_wrong_number_is_refused_with_those_there_are() => Assert.Equal(
        "quay.abc: the file has no tune 2; expected one of 7, 3\n",
        AbcText.Messages(Book, new SheetChoice(Piece: 2)));

    [Theory]
    [InlineData(2, "quay.abc: the file has no tune 2; expected a number behind the 'X:' of every tune\n")]
    [InlineData(null, "the file has 2 tunes, the first is read; expected the number of another to be chosen: none has one behind its 'X:'\n")]
    [InlineData(null, "quay.abc:1:1: a tune without a number; expected a whole number behind 'X:'\n")]
    public void Tunes_without_numbers_are_told_as_such(int? piece, string told) =>
        Assert.Contains(told, AbcText.Messages("X:\nM:4/4\nK:C\nC8|\n\nX:\nM:4/4\nK:C\nD8|\n", new SheetChoice(Piece: piece)), StringComparison.Ordinal);

    [Fact]
    public void Text_and_empty_lines_around_tunes_do_not_matter() => Assert.Equal("C4 4", AbcText.Heard(AbcText.Sheet(
        "\uFEFF% kelp\r\nWords.\r\n\r\n%%begintext\r\n\r\nX:9\r\n%%endtext\r\nX:1\r\nM:4/4\r\nL:1/4\r\nK:C\r\n%%begintext\r\n\r\n%%endtext\r\nC4|\r\n\r\n")));

    [Fact]
    public void Without_a_title_the_files_name_is_one() => Assert.Equal("quay", AbcText.Sheet("X:1\nM:4/4\nK:C\nC8|").Title);

    [Theory]
    [InlineData("m:~n3 = n\nK:C\nC8", "macros")]
    [InlineData("U:n = !trill!\nK:C\nnC8", "letters of one's own")]
    [InlineData("J:x\nK:C\nC8", "the field 'J:' is not known")]
    [InlineData("K:C transpose=2\nC8", "'transpose=' is not followed")]
    [InlineData("K:C kelp=2\nC8", "'kelp=2' is not known here")]
    [InlineData("K:C\n!kelp!C8", "the decoration 'kelp' is not known")]
    [InlineData("K:C\nC8!D.C.!|", "'D.C.' is not followed")]
    [InlineData("K:C\nC8 & E8|", "a second voice inside a bar")]
    [InlineData("K:C\ns:!trill!\nC8|", "symbol lines")]
    [InlineData("K:C\nC8*|", "'*' alone has no meaning")]
    [InlineData("K:C\nC8|\n\nD8|", "text after an empty line")]
    [InlineData("M:2+3/8\nK:C\nC8|", "the groups of 2+3/8 are not kept")]
    [InlineData("P:AABA\nK:C\nC8|", "no part is marked in the tune, so the order 'AABA' is not followed")]
    [InlineData("P:AB\nK:C\nP:A\nC8|\nP:B\nD8|\nP:A\nE8|", "part 'A' begins a second time")]
    [InlineData("L:1/4\nK:C\n(3CD", "the tune ends one note before this tuplet does")]
    [InlineData("L:1/4\nK:C\n(3C", "the tune ends 2 notes before this tuplet does")]
    public void What_is_passed_over_is_told(string text, string warning) => AbcText.AssertWarnsOf(warning, "X:1\nM:4/4\n" + text);

    [Theory]
    [InlineData("w:kelp*\nW:weed\nT:Second part\nN:note\nr:remark\n%%MIDI program 1")]
    [InlineData("I:linebreak $\n+:more")]
    public void Words_between_the_music_are_passed_over_in_silence(string lines) =>
        Assert.Equal("", AbcText.Messages($"{AbcText.Head}C4|\n{lines}\nD4|"));

    [Fact]
    public void Beats_of_the_tune_stay_exact()
    {
        var sheet = AbcText.Music("(3CDE (5CDEFG (7CDEFGAB z|");

        Assert.Equal(Beats.OfQuarters(2) * 3 + Beats.OfQuarters(1), sheet.Length);
    }
}
