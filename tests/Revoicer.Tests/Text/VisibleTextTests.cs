using System.Text.Json;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Text;

public class VisibleTextTests
{
    // ECMA-48, sections 8.3.16 and 8.3.117: an escape sequence that changes the colour; the same with the one-character CSI.
    [Theory]
    [InlineData("quay\u001b[31mred", "quay\\u001b[31mred")]
    [InlineData("quay\u009b31mred", "quay\\u009b31mred")]
    [InlineData("bell\a, back\b, over\r, gone\u007f", "bell\\u0007, back\\u0008, over\\u000d, gone\\u007f")]
    public void What_a_terminal_would_obey_is_shown(string text, string shown) => Assert.Equal(shown, VisibleText.Of(text));

    // Unicode Standard Annex 9, table 4 and section 2: all explicit directional formatting characters and marks.
    [Theory]
    [InlineData('\u202A')]
    [InlineData('\u202B')]
    [InlineData('\u202C')]
    [InlineData('\u202D')]
    [InlineData('\u202E')]
    [InlineData('\u2066')]
    [InlineData('\u2067')]
    [InlineData('\u2068')]
    [InlineData('\u2069')]
    [InlineData('\u200E')]
    [InlineData('\u200F')]
    [InlineData('\u061C')]
    public void What_turns_the_direction_is_shown(char mark) => Assert.Equal($"a\\u{(int)mark:x4}b", VisibleText.Of($"a{mark}b"));

    [Theory]
    [InlineData("two\n\tlines\n")]
    [InlineData("Ebbe und Flut, Räucherkammer, C\u266f\u0394\u2077")]
    [InlineData("\U0001D11E and \U0001F468\u200D\U0001F3A4")]
    [InlineData("\u0645\u06CC\u200C\u062E")]
    public void Ordinary_text_stays(string text) => Assert.Same(text, VisibleText.Of(text));

    [Fact]
    public void On_one_line_its_ends_are_shown_too() => Assert.Equal("a\\u000ab\\u0009c\\u2028d", VisibleText.OneLine("a\nb\tc\u2028d"));

    [Fact]
    public void A_mark_of_two_halves_is_shown_whole() => Assert.Equal("a\\udb40\\udc01b", VisibleText.Of("a\U000E0001b"));

    // RFC 8259, section 7: the same notation, so a text in JSON means the same before and after.
    [Law]
    public void A_text_of_json_keeps_its_meaning(FsCheck.NonNull<string> text)
    {
        var json = JsonSerializer.Serialize(text.Get, new JsonSerializerOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        Assert.Equal(JsonSerializer.Deserialize<string>(json), JsonSerializer.Deserialize<string>(VisibleText.Of(json)));
    }

    [Fact]
    public void A_mark_that_json_leaves_alone_keeps_its_meaning() =>
        Assert.Equal("a\u202Eb", JsonSerializer.Deserialize<string>(VisibleText.Of("\"a\u202Eb\"")));

    [Law]
    public void What_is_shown_is_shown_once(FsCheck.NonNull<string> text) =>
        Assert.Equal(VisibleText.OneLine(text.Get), VisibleText.Of(VisibleText.OneLine(text.Get)));
}
