using System.Text;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Text;

public class SheetBytesTests
{
    [Theory]
    [InlineData("T:Ebbe und Flut \u2013 f\u00FCr Glocken")]
    [InlineData("")]
    [InlineData("\U0001D11E")]
    public void Utf8_is_read_with_and_without_mark(string text)
    {
        Assert.Equal(new DecodedSheet(text, IsUtf8: true), SheetBytes.Decode(Encoding.UTF8.GetBytes(text)));
        Assert.Equal(new DecodedSheet(text, IsUtf8: true), SheetBytes.Decode([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(text)]));
    }

    [Fact]
    public void Other_bytes_are_read_as_Windows_1252()
    {
        var decoded = SheetBytes.Decode([.. "f"u8, 0xFC, .. "r "u8, 0x80, 0x96, 0x9F, 0xA0, 0xFF]);

        Assert.Equal(new DecodedSheet("f\u00FCr \u20AC\u2013\u0178\u00A0\u00FF", IsUtf8: false), decoded);
        Assert.Contains("Windows-1252", decoded.Warning("quay.abc")!.ToString(), StringComparison.Ordinal);
        Assert.Null(SheetBytes.Decode("x"u8).Warning("quay.abc"));
    }

    [Fact]
    public void A_mark_before_other_bytes_is_no_text_either() =>
        Assert.Equal(new DecodedSheet("X:1 f\u00FCr", IsUtf8: false), SheetBytes.Decode([0xEF, 0xBB, 0xBF, .. "X:1 f"u8, 0xFC, .. "r"u8]));

    // Byte order marks: the Unicode standard, table 2-4 (from memory).
    [Fact]
    public void Utf16_is_known_by_its_mark()
    {
        Assert.True(SheetBytes.IsUtf16([.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("X:1")]));
        Assert.True(SheetBytes.IsUtf16([.. Encoding.BigEndianUnicode.Preamble, .. Encoding.BigEndianUnicode.GetBytes("X:1")]));
        Assert.False(SheetBytes.IsUtf16("X:1"u8));
        Assert.False(SheetBytes.IsUtf16([0xFF]));
    }

    // CP1252.TXT of the Unicode Consortium marks 81, 8D, 8F, 90 and 9D as undefined; all others have a character of their own.
    [Fact]
    public void Every_byte_has_a_character_and_five_have_none_of_their_own()
    {
        var text = SheetBytes.Decode([.. Enumerable.Range(0, 256).Select(b => (byte)b)]).Text;

        Assert.Equal([0x81, 0x8D, 0x8F, 0x90, 0x9D], Enumerable.Range(0, 256).Where(b => text[b] == '\uFFFD'));
        Assert.Equal(252, text.Distinct().Count());
        Assert.All(Enumerable.Range(0, 256).Where(b => b is < 0x80 or >= 0xA0), b => Assert.Equal(b, text[b]));
    }
}
