using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace Revoicer.Writing.Json;

/// <summary>Reads JSON bytes into values that know their places.</summary>
internal ref struct JsonTree
{
    // An arrangement of an hour has some 200,000 values. Estimate; it keeps a hostile file from filling memory.
    private const int MostValues = 1_000_000;

    private readonly JsonProblems _problems;
    private readonly int _base;
    private Utf8JsonReader _reader;
    private int _values;

    private JsonTree(JsonProblems problems, int skip)
    {
        (_problems, _base) = (problems, skip);
        _reader = new Utf8JsonReader(problems.File.Span[skip..]);
    }

    private readonly int Offset => _base + (int)_reader.TokenStartIndex;

    private readonly int TokenLength => (int)(_reader.BytesConsumed - _reader.TokenStartIndex);

    /// <summary>The root value, or null where the file could not be read; then the problem has been added.</summary>
    public static JsonValue? Parse(JsonProblems problems)
    {
        var file = problems.File.Span;
        if (!Utf8.IsValid(file))
        {
            problems.Add(FirstNotUtf8(file), 1, "a byte that is no UTF-8 text", "a file in UTF-8");
            return null;
        }

        // RFC 8259, section 8.1: a byte order mark may be passed over.
        var tree = new JsonTree(problems, file.StartsWith("\uFEFF"u8) ? 3 : 0);
        return tree.Root();
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

    private JsonValue? Root()
    {
        try
        {
            _reader.Read();
            var root = Value();
            _reader.Read();
            return root;
        }
        catch (JsonException)
        {
            var at = _base + (int)_reader.BytesConsumed;
            AddBroken(at);
        }
        catch (TooManyValues)
        {
            _problems.AddWhole($"the file has more than {MostValues} values", "an arrangement");
        }

        return null;
    }

    // The library stops before the token that it cannot read; blanks in front of that are passed over here.
    private readonly void AddBroken(int at)
    {
        var file = _problems.File.Span;
        while (at < file.Length && file[at] is (byte)' ' or (byte)'\n' or (byte)'\r' or (byte)'\t')
        {
            at++;
        }

        if (at >= file.Length)
        {
            _problems.Add(Math.Max(0, file.TrimEnd("\n\r\t "u8).Length), 1, "the file ends too early", "the rest of the JSON text");
        }
        else
        {
            _problems.Add(at, 1, "this is no JSON, or is left unfinished", "well-formed JSON, nested at most 64 deep");
        }
    }

    private JsonValue Value()
    {
        if (++_values > MostValues)
        {
            throw new TooManyValues();
        }

        return _reader.TokenType switch
        {
            JsonTokenType.StartObject => Object(),
            JsonTokenType.StartArray => List(),
            JsonTokenType.String => new JsonValue.Text(Offset, TokenLength, TextOfToken()),
            JsonTokenType.Number => new JsonValue.Number(
                Offset, TokenLength, _reader.GetDouble(), _reader.TryGetInt64(out var whole) ? whole : null),
            JsonTokenType.True or JsonTokenType.False => new JsonValue.Truth(Offset, TokenLength, _reader.GetBoolean()),
            _ => new JsonValue.Nothing(Offset, TokenLength),
        };
    }

    private JsonValue.Object Object()
    {
        var offset = Offset;
        var members = new List<JsonMember>();
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndObject)
        {
            var (at, length, name) = (Offset, TokenLength, TextOfToken());
            _reader.Read();
            members.Add(new JsonMember(name, at, length, Value()));
        }

        return new JsonValue.Object(offset, 1, members);
    }

    private JsonValue.List List()
    {
        var offset = Offset;
        var elements = new List<JsonValue>();
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
        {
            elements.Add(Value());
        }

        return new JsonValue.List(offset, 1, elements);
    }

    private readonly string TextOfToken()
    {
        try
        {
            return _reader.GetString()!;
        }
        catch (InvalidOperationException)
        {
            _problems.Add(Offset, TokenLength, "an escape for half a character", "both halves, \\uD800-\\uDBFF and \\uDC00-\\uDFFF");
            return "";
        }
    }

    private sealed class TooManyValues : Exception;
}
