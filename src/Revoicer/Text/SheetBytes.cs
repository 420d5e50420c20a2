using System.Text;

namespace Revoicer.Text;

/// <summary>The text of a sheet file.</summary>
/// <param name="Text">The text, without byte order mark.</param>
/// <param name="IsUtf8">Whether the bytes were UTF-8; else they were read as Windows-1252.</param>
public sealed record DecodedSheet(string Text, bool IsUtf8)
{
    /// <summary>What is to be told of a file that was not UTF-8; null where it was.</summary>
    /// <param name="fileName">The file's name as messages give it.</param>
    public Problem? Warning(string fileName) => IsUtf8 ? null : new Problem(
        Place.WholeFile(fileName),
        "the file is not UTF-8 and was read as Windows-1252",
        "UTF-8; letters with accents in titles may be wrong, the music is not");
}

/// <summary>Turns the bytes of a sheet file into text.</summary>
public static class SheetBytes
{
    // 0x80..0x9F of Windows-1252, from the mapping table that the Unicode Consortium publishes (CP1252.TXT; from
    // memory). Five bytes have no character there and become U+FFFD.
    private const string Windows1252 =
        "\u20AC\uFFFD\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\uFFFD\u017D\uFFFD"
        + "\uFFFD\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\uFFFD\u017E\u0178";

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads bytes as UTF-8 (RFC 3629), with or without byte order mark; where they are none, as Windows-1252.</summary>
    /// <param name="bytes">The whole file. Any bytes give a text.</param>
    public static DecodedSheet Decode(ReadOnlySpan<byte> bytes)
    {
        var content = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        try
        {
            return new DecodedSheet(Strict.GetString(content), IsUtf8: true);
        }
        catch (DecoderFallbackException)
        {
            return new DecodedSheet(string.Create(content.Length, content, Fill), IsUtf8: false);
        }
    }

    /// <summary>Whether the bytes begin with the byte order mark of UTF-16, either way round: such a file is no sheet.</summary>
    public static bool IsUtf16(ReadOnlySpan<byte> bytes) => bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..];

    private static void Fill(Span<char> text, ReadOnlySpan<byte> bytes)
    {
        for (var i = 0; i < text.Length; i++)
        {
            text[i] = bytes[i] is >= 0x80 and < 0xA0 ? Windows1252[bytes[i] - 0x80] : (char)bytes[i];
        }
    }
}
