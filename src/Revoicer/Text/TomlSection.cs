using System.Globalization;
using Tomlyn.Syntax;

namespace Revoicer.Text;

/// <summary>A word of a settings file with its value and place.</summary>
internal sealed record TomlWord<T>(T Value, Place Where);

/// <summary>
/// The words under one heading of a settings file. A value asked for and not there is null; one of the wrong kind or
/// out of range is null with a problem in the common list.
/// </summary>
internal sealed class TomlSection
{
    private readonly Dictionary<string, (Place Key, Place Where, ValueSyntax Value)> _words = [];
    private readonly SourceText _source;
    private readonly List<Problem> _problems;

    public TomlSection(
        string name, Place where, bool isOneOfMany, IEnumerable<KeyValueSyntax> words, SourceText source, List<Problem> problems)
    {
        Name = name;
        Where = where;
        IsOneOfMany = isOneOfMany;
        _source = source;
        _problems = problems;
        foreach (var word in words)
        {
            var key = TomlText.Dotted(word.Key!);
            var place = At(word.Key!);
            if (!_words.TryAdd(key, (place, At(word.Value!), word.Value!)))
            {
                Add(place, $"'{key}' is given twice", $"one line for it (the first is line {_words[key].Key.Line})");
            }
        }
    }

    /// <summary>The heading without brackets: "limits", "bell.partial"; empty for what stands before the first.</summary>
    public string Name { get; }

    /// <summary>Where the heading stands.</summary>
    public Place Where { get; }

    /// <summary>Whether the heading stands in double brackets.</summary>
    public bool IsOneOfMany { get; }

    /// <summary>The words given, in the order of the file.</summary>
    public IEnumerable<string> Words => _words.Keys;

    /// <summary>Where a word's value stands; the heading's place where the word is missing.</summary>
    public Place PlaceOf(string word) => _words.TryGetValue(word, out var found) ? found.Where : Where;

    /// <summary>Where a word stands with its value; the heading's place where the word is missing.</summary>
    public Place LineOf(string word)
    {
        if (!_words.TryGetValue(word, out var found))
        {
            return Where;
        }

        var (key, value) = (found.Key, found.Where);
        return key.Line == value.Line ? key.Part(0, value.Column + value.Length - key.Column) : key;
    }

    /// <summary>Adds a problem for every word that is none of the known ones.</summary>
    public void KnowsOnly(params string[] known)
    {
        foreach (var (word, (place, _, _)) in _words)
        {
            if (!known.Contains(word))
            {
                Add(place, $"'{word}' is no word of this part", "one of " + string.Join(", ", known));
            }
        }
    }

    /// <summary>Adds a problem, with the heading as its place, for every word that is missing.</summary>
    public void Needs(params string[] words)
    {
        foreach (var word in words.Where(w => !_words.ContainsKey(w)))
        {
            var part = Name == "" ? "the file" : $"this [{Name}]";
            Add(Name == "" ? Place.WholeFile(_source.Name) : Where, $"{part} has no line '{word}'", $"{word} = ...");
        }
    }

    /// <summary>A text in quotes, at most 200 characters, on one line and not empty.</summary>
    public TomlWord<string>? Text(string word)
    {
        if (!_words.TryGetValue(word, out var found))
        {
            return null;
        }

        return Text(found.Value, found.Where, $"'{word}'");
    }

    /// <summary>A list of texts in brackets.</summary>
    public IReadOnlyList<TomlWord<string>>? Texts(string word)
    {
        if (!_words.TryGetValue(word, out var found))
        {
            return null;
        }

        if (found.Value is ArraySyntax array)
        {
            return [.. array.Items.Select(i => Text(i.Value!, At(i.Value!), $"an entry of '{word}'")).OfType<TomlWord<string>>()];
        }

        Add(found.Where, $"'{word}' is {Kind(found.Value)}", "a list in brackets, [\"C3\", \"D3\"]");
        return null;
    }

    /// <summary>A number of a range, both ends included.</summary>
    public TomlWord<double>? Number(string word, double lowest, double highest, string unit)
    {
        if (!_words.TryGetValue(word, out var found))
        {
            return null;
        }

        var value = found.Value switch
        {
            IntegerValueSyntax whole => whole.Value,
            FloatValueSyntax real => real.Value,
            _ => double.NaN,
        };
        if (value >= lowest && value <= highest)
        {
            return new TomlWord<double>(value, found.Where);
        }

        Add(found.Where, $"'{word}' is {Kind(found.Value)}", FormattableString.Invariant($"a number from {lowest} to {highest}{unit}"));
        return null;
    }

    /// <summary>A whole number of a range, both ends included.</summary>
    public TomlWord<int>? Whole(string word, int lowest, int highest, string unit)
    {
        if (!_words.TryGetValue(word, out var found))
        {
            return null;
        }

        if (found.Value is IntegerValueSyntax whole && whole.Value >= lowest && whole.Value <= highest)
        {
            return new TomlWord<int>((int)whole.Value, found.Where);
        }

        Add(found.Where, $"'{word}' is {Kind(found.Value)}", FormattableString.Invariant($"a whole number from {lowest} to {highest}{unit}"));
        return null;
    }

    /// <summary>A small table in braces, { hard = 5, soft = 4 }.</summary>
    public TomlSection? Inner(string word)
    {
        if (!_words.TryGetValue(word, out var found))
        {
            return null;
        }

        if (found.Value is InlineTableSyntax table)
        {
            var words = table.Items.Select(i => i.KeyValue).OfType<KeyValueSyntax>();
            return new TomlSection(word, found.Key, false, words, _source, _problems);
        }

        Add(found.Where, $"'{word}' is {Kind(found.Value)}", "words in braces, { word = value }");
        return null;
    }

    private TomlWord<string>? Text(ValueSyntax value, Place where, string what)
    {
        if (value is StringValueSyntax { Value: { Length: > 0 and <= 200 } text } && !text.Any(char.IsControl))
        {
            return new TomlWord<string>(text, where);
        }

        Add(where, $"{what} is {Kind(value)}", "a text in quotes on one line, of 1 to 200 characters");
        return null;
    }

    private static string Kind(ValueSyntax value) => value switch
    {
        StringValueSyntax { Value.Length: <= 40 } text => $"the text '{text.Value}'",
        StringValueSyntax => "a long text",
        IntegerValueSyntax whole => whole.Value.ToString(CultureInfo.InvariantCulture),
        FloatValueSyntax { Value: var real } when double.IsFinite(real) => Decimal(real.ToString(CultureInfo.InvariantCulture)),
        FloatValueSyntax => "not a finite number",
        BooleanValueSyntax truth => truth.Value ? "true" : "false",
        ArraySyntax => "a list",
        InlineTableSyntax => "a table in braces",
        _ => "a date or time",
    };

    // 12.0 is no whole number in TOML and must not be told as if it were.
    private static string Decimal(string number) => number.All(c => char.IsAsciiDigit(c) || c == '-') ? number + ".0" : number;

    private void Add(Place where, string found, string expected) => _problems.Add(new Problem(where, found, expected));

    private Place At(SyntaxNode node) => _source.At(node.Span.Start.Offset, node.Span.Length);
}
