using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace Revoicer.Writing.Json;

/// <summary>Whether bytes are JSON (RFC 8259) of a size that can be held, looked at before a document is made of them.</summary>
internal static class JsonCheck
{
    // An arrangement of an hour has some 200,000 values. Estimate; it keeps a hostile file from filling memory.
    private const int MostValues = 1_000_000;

    /// <summary>The document that the file is; null where it is none, then its problems have been added.</summary>
    public static JsonDocument? Document(JsonProblems problems)
    {
        var file = problems.File.Span;
        if (!Utf8.IsValid(file))
        {
            problems.Add(FirstNotUtf8(file), 1, "a byte that is no UTF-8 text", "a file in UTF-8");
            return null;
        }

        // RFC 8259, section 8.1: a byte order mark may be passed over.
        var skipped = file.StartsWith("\uFEFF"u8) ? 3 : 0;
        return IsJson(file[skipped..], skipped, problems) ? JsonDocument.Parse(problems.File[skipped..]) : null;
    }

    private static int FirstNotUtf8(ReadOnlySpan<byte> file)
    {
        var at = 0;
        while (Rune.DecodeFromUtf8(file[at..], out _, out var length) == OperationStatus.Done)
        {
            at += length;
        }

        return Math.Min(at, file.Length - 1);
    }

    private static bool IsJson(ReadOnlySpan<byte> text, int skipped, JsonProblems problems)
    {
        var reader = new Utf8JsonReader(text);
        try
        {
            for (var values = 0; reader.Read();)
            {
                values += reader.TokenType is JsonTokenType.PropertyName or JsonTokenType.EndObject or JsonTokenType.EndArray ? 0 : 1;
                if (values > MostValues)
                {
                    problems.AddWhole($"the file has more than {MostValues} values", "an arrangement");
                    return false;
                }

                if (reader.ValueIsEscaped && !HasWholeEscapes(in reader))
                {
                    var (at, length) = (skipped + (int)reader.TokenStartIndex, (int)(reader.BytesConsumed - reader.TokenStartIndex));
                    problems.Add(at, length, "an escape for half a character", "both halves, \\uD800-\\uDBFF and \\uDC00-\\uDFFF");
                }
            }

            return true;
        }
        catch (JsonException)
        {
            AddBroken(text, (int)reader.BytesConsumed, skipped, problems);
            return false;
        }
    }

    private static bool HasWholeEscapes(in Utf8JsonReader token)
    {
        try
        {
            return token.GetString() is not null;
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }

    // The reader stops before the token that it cannot read; blanks in front of that are passed over here.
    private static void AddBroken(ReadOnlySpan<byte> text, int at, int skipped, JsonProblems problems)
    {
        var blanks = " \n\r\t"u8;
        var stray = text[at..].IndexOfAnyExcept(blanks);
        if (stray < 0)
        {
            problems.Add(Math.Max(0, skipped + text.TrimEnd(blanks).Length), 1, "the file ends too early", "the rest of the JSON text");
        }
        else
        {
            problems.Add(skipped + at + stray, 1, "this is no JSON, or is left unfinished", "well-formed JSON, nested at most 64 deep");
        }
    }
}
