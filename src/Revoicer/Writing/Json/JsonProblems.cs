using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>Collects what is wrong with a JSON file and finds line and column for it.</summary>
/// <param name="source">The file's name.</param>
/// <param name="file">Its bytes.</param>
internal sealed class JsonProblems(string source, byte[] file)
{
    // More would hide the first; a file that is wrong so often is wrong as a whole.
    private const int Most = 100;

    // A line is shown so far; a file on one long line would else be repeated in every message.
    private const int LongestLineShown = 300;

    private readonly List<(int Offset, Problem Problem)> _problems = [];

    public ReadOnlyMemory<byte> File => file;

    public bool None => _problems.Count == 0;

    /// <summary>The problems by their place in the file.</summary>
    public Items<Problem> InOrder() => _problems.OrderBy(p => p.Offset).Select(p => p.Problem).ToItems();

    /// <summary>The file as a whole is wrong.</summary>
    public void AddWhole(string found, string expected) =>
        _problems.Add((0, new Problem(Place.WholeFile(source), found, expected)));

    /// <summary>A value of the file's document is wrong; of an object or a list its first bracket is shown.</summary>
    public void Add(JsonElement value, string found, string expected)
    {
        var bytes = JsonMarshal.GetRawUtf8Value(value);
        Add(OffsetOf(bytes), value.ValueKind is JsonValueKind.Object or JsonValueKind.Array ? 1 : bytes.Length, found, expected);
    }

    /// <summary>The name of a member of the file's document is wrong.</summary>
    public void AddName(JsonProperty member, string found, string expected)
    {
        // The name is shown with its quotes.
        var bytes = JsonMarshal.GetRawUtf8PropertyName(member);
        Add(OffsetOf(bytes) - 1, bytes.Length + 2, found, expected);
    }

    public void Add(int offset, int length, string found, string expected)
    {
        if (_problems.Count < Most)
        {
            _problems.Add((offset, new Problem(At(offset, length), found, expected)));
        }
    }

    // The document lies on the file's own bytes.
    private int OffsetOf(ReadOnlySpan<byte> bytes) =>
        File.Span.Overlaps(bytes, out var offset) ? offset : throw new ArgumentException("the bytes are not the file's", nameof(bytes));

    private Place At(int offset, int length)
    {
        ReadOnlySpan<byte> bytes = file;
        var before = bytes[..offset];
        var lineStart = before.LastIndexOf((byte)'\n') + 1;
        var rest = bytes[lineStart..];
        var lineLength = rest.IndexOf((byte)'\n') is var end and >= 0 ? end : rest.Length;
        var line = Encoding.UTF8.GetString(rest[..Math.Min(lineLength, 4 * LongestLineShown)]).TrimEnd('\r');
        var shown = line.Length <= LongestLineShown ? line : line[..LongestLineShown] + "...";
        var column = Encoding.UTF8.GetCharCount(before[lineStart..]) + 1;
        var meant = Math.Min(length, Math.Max(1, lineLength - (offset - lineStart)));
        return new Place(source, before.Count((byte)'\n') + 1, column, Math.Min(meant, LongestLineShown), shown);
    }
}
