using System.Text;
using Revoicer.Cli.Streams;

namespace Revoicer.Cli.Files;

/// <summary>Reads a text from disk: UTF-8 and of a bounded size, whatever the name leads to.</summary>
internal static class TextFile
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The text without a byte order mark; null, with a sentence told, where it cannot be had.</summary>
    /// <param name="path">The file.</param>
    /// <param name="kind">What it should hold, with its article: "a sheet".</param>
    /// <param name="largest">The most bytes that such a file may have.</param>
    /// <param name="error">Where the sentence goes.</param>
    public static string? Read(string path, string kind, int largest, TextWriter error)
    {
        try
        {
            return Bytes(path, kind, largest, error) is { } content ? Strict.GetString(WithoutMark(content)) : null;
        }
        catch (DecoderFallbackException)
        {
            error.Say($"{path}: the file is not UTF-8 text; expected it saved as UTF-8");
            return null;
        }
    }

    /// <summary>The bytes of a file; null, with a sentence told, where they cannot be had.</summary>
    /// <param name="path">The file.</param>
    /// <param name="kind">What it should hold, with its article: "a sheet".</param>
    /// <param name="largest">The most bytes that such a file may have.</param>
    /// <param name="error">Where the sentence goes.</param>
    public static byte[]? Bytes(string path, string kind, int largest, TextWriter error)
    {
        try
        {
            using var file = File.OpenRead(path);
            var content = AtMost(file, largest + 1);
            if (content.Length <= largest)
            {
                return content.ToArray();
            }

            error.Say($"{path}: the file has more than {largest} bytes; expected {kind} of at most so many");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            error.Say($"{path}: cannot be opened: {Reason(e)}");
        }

        return null;
    }

    // The length that a file states is not asked for: a pipe has none, and a device may have no end.
    private static ReadOnlySpan<byte> AtMost(Stream file, int most)
    {
        using var content = new MemoryStream();
        var buffer = new byte[1 << 16];
        while (content.Length < most && file.Read(buffer) is > 0 and var read)
        {
            content.Write(buffer, 0, read);
        }

        return content.GetBuffer().AsSpan(0, (int)content.Length);
    }

    private static ReadOnlySpan<byte> WithoutMark(ReadOnlySpan<byte> content) =>
        content.StartsWith(Encoding.UTF8.Preamble) ? content[Encoding.UTF8.Preamble.Length..] : content;

    private static string Reason(Exception e) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is no such file; check the name",
        UnauthorizedAccessException => "it is a folder, or you may not read it",
        _ => e.Message.TrimEnd('.'),
    };
}
