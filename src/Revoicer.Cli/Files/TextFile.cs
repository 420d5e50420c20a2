using System.Text;

namespace Revoicer.Cli.Files;

/// <summary>Reads text files: UTF-8 and no other, of a sensible size.</summary>
internal static class TextFile
{
    private const int LargestBytes = 4 * 1024 * 1024;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The text; null, with a sentence, where it cannot be read.</summary>
    public static string? Read(string path, TextWriter error)
    {
        if (Bytes(path, error) is not { } bytes)
        {
            return null;
        }

        try
        {
            // A byte order mark is no part of the text.
            return Strict.GetString(bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes.AsSpan(3) : bytes);
        }
        catch (DecoderFallbackException)
        {
            error.Write($"{path}: the file is not UTF-8 text; expected UTF-8: save it again as UTF-8\n");
            return null;
        }
    }

    /// <summary>The bytes of a file of a sensible size; null, with a sentence, where it cannot be read.</summary>
    public static byte[]? Bytes(string path, TextWriter error)
    {
        try
        {
            using var file = File.OpenRead(path);
            if (file.Length > LargestBytes)
            {
                error.Write($"{path}: the file has {file.Length} bytes; expected at most {LargestBytes}\n");
                return null;
            }

            var bytes = new byte[file.Length];
            file.ReadExactly(bytes);
            return bytes;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            error.Write($"{path}: cannot be opened: {Reason(e)}\n");
            return null;
        }
    }

    private static string Reason(Exception e) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is no such file; check the name",
        UnauthorizedAccessException => "it is a folder, or you may not read it",
        _ => e.Message.TrimEnd('.'),
    };
}
