using Xunit;
using static Revoicer.Tests.LeadSheets.MusicXml.Score;

namespace Revoicer.Tests.LeadSheets.MusicXml;

/// <summary>The order in which bars are heard: what every player makes of the signs (common practice).</summary>
public sealed class MusicXmlOrderTests
{
    private const string Forward = "<barline location=\"left\"><repeat direction=\"forward\"/></barline>";
    private const string Back = "<barline location=\"right\"><repeat direction=\"backward\"/></barline>";

    // Signs before the music of a bar, then those behind it.
    [Theory]
    [InlineData("1 1 2", "", "back")]
    [InlineData("1 2 3 2 3 4", "", "", "forward", "", "", "back", "", "")]
    [InlineData("1 2 1 3", "", "", "[1", "back1", "[2", "]2")]
    [InlineData("1 2 1 2 1 3 4", "", "", "[1,2", "back1,2", "[3", "]3", "", "")]
    [InlineData("1 2 1 3 1 2 1 4 5", "", "", "[1, 3", "back1, 3", "[2", "back2", "[4", "]4", "", "")]
    [InlineData("1 1 1 2", "", "times3")]
    [InlineData("1 2 1 2 3", "", "", "", "dc", "", "")]
    [InlineData("1 2 3 1", "", "fine", "", "", "", "dc")]
    [InlineData("1 2 3 2 4", "", "", "segno", "tocoda", "", "ds", "coda", "")]
    [InlineData("1 1 2 1 2", "", "back", "", "dc")]
    [InlineData("1 2 1 3 1 3 4", "", "", "[1", "back1", "[2", "]2dc", "", "")]
    [InlineData("1 2 1 2", "", "", "", "wordsdc")]
    public void Bars_are_heard_in_the_order_of_their_signs(string heard, params string[] signs)
    {
        var bars = Enumerable.Range(0, Math.Max(2, (signs.Length + 1) / 2))
            .Select(i => (i == 0 ? Attributes : "") + Sign(signs.ElementAtOrDefault(2 * i)) + Note("C5") + Sign(signs.ElementAtOrDefault((2 * i) + 1)));
        Assert.Equal(heard, Heard(Sheet(Of([.. bars]))));
    }

    // MusicXML 4.0 says where the bracket of an ending is drawn; how far the ending reaches, and what is heard where its number
    // is missing, is common practice: every bar is heard.
    [Theory]
    [InlineData("1 2 3 1 4 5", "", "", "[1", "]1", "", "back", "[2", "]2", "", "")]
    [InlineData("1 2 3 4 1 5", "", "", "[1", "]1", "", "", "", "back", "[2", "]2")]
    [InlineData("1 2 3 1 4 5 1 6", "", "", "[1", "]1", "", "back", "[2", "]2", "", "back", "[3", "]3")]
    [InlineData("1 2 3 1 4", "", "", "[1", "]1", "", "back", "", "")]
    [InlineData("1 2 1 3 4 4 5", "", "", "[1", "back1", "[2", "]2", "", "back", "", "")]
    [InlineData("1 2 1 3", "", "", "[1", "back1", "[3", "]3")]
    [InlineData("1 2 1 3", "", "", "[1", "back1", "[1", "]1")]
    [InlineData("1 2 1 3", "", "", "[1", "]1", "[2", "back2")]
    [InlineData("1 2 1 3 1 4", "", "", "[1", "back1", "[2", "]2", "[3", "]3")]
    [InlineData("1 2 1 3 4 3 5", "", "", "[1", "back1", "forward", "", "[1", "back1", "[2", "]2")]
    [InlineData("1 2 1 3 4", "", "", "[1", "dc", "[2", "", "", "")]
    public void Every_bar_is_heard_where_a_bracket_is_drawn_short_or_its_number_is_missing(string heard, params string[] signs)
    {
        var sheet = Sheet(Of([.. Enumerable.Range(0, signs.Length / 2).Select(i => (i == 0 ? Attributes : "") + Sign(signs[2 * i]) + Note("C5") + Sign(signs[(2 * i) + 1]))]));
        Assert.Equal(heard, Heard(sheet));
        Assert.Empty(sheet.Unheard);
    }

    [Fact]
    public void Bars_that_are_never_heard_are_named()
    {
        var sheet = Accepted(Of(Attributes + Note("C5") + Sign("fine"), Sign("[2") + Note("C5"), Note("C5") + Sign("]2"), Note("C5") + Sign("dc"), Note("C5")));

        Assert.Equal("1 4 1", Heard(sheet.Value));
        Assert.Equal([2, 3, 5], sheet.Value.Unheard);
        Assert.Contains(sheet.Warnings, w => w.Found == "repeats, endings and jumps leave this bar unheard");
    }

    [Fact]
    public void A_repeat_sign_inside_a_bar_is_refused() => Assert.Equal(
        "a repeat sign inside a bar",
        Problem(Of(Attributes + Note("C5", 4) + "<barline location=\"middle\"><repeat direction=\"backward\"/></barline>" + Note("C5", 4))).Found);

    [Fact]
    public void A_second_ending_goes_on_with_the_chord_before_the_first() => Assert.Equal(
        "1.0 C; 2.0 G; 3.0 C",
        Symbols(Sheet(Of(Attributes + Chord("C") + Note("C5"), Sign("[1") + Chord("G") + Note("C5") + Sign("back1"), Sign("[2") + Note("C5") + Sign("]2")))));

    private static string Sign(string? sign) => sign switch
    {
        null or "" => "",
        "forward" => Forward,
        "back" => Back,
        "times3" => Back.Replace("\"backward\"", "\"backward\" times=\"3\"", StringComparison.Ordinal),
        "dc" => "<direction><direction-type><words>D.C.</words></direction-type><sound dacapo=\"yes\"/></direction>",
        "wordsdc" => "<direction><direction-type><words>D.C. al Fine</words></direction-type></direction>",
        "ds" => "<direction><direction-type><words>D.S. al Coda</words></direction-type><sound dalsegno=\"1\"/></direction>",
        "fine" => "<direction><direction-type><words>Fine</words></direction-type><sound fine=\"yes\"/></direction>",
        "segno" => "<direction><direction-type><segno/></direction-type></direction>",
        "tocoda" => "<direction><direction-type><coda/></direction-type><sound tocoda=\"1\"/></direction>",
        "coda" => "<direction><direction-type><coda/></direction-type><sound coda=\"1\"/></direction>",
        ['[', .. var numbers] => $"<barline location=\"left\"><ending number=\"{numbers}\" type=\"start\"/></barline>",
        ['b', 'a', 'c', 'k', .. var numbers] => $"<barline location=\"right\"><ending number=\"{numbers}\" type=\"stop\"/><repeat direction=\"backward\"/></barline>",
        "]2dc" => Sign("]2") + Sign("dc"),
        [']', .. var numbers] => $"<barline location=\"right\"><ending number=\"{numbers}\" type=\"discontinue\"/></barline>",
        _ => throw new ArgumentOutOfRangeException(nameof(sign), sign, "no such sign"),
    };
}
