using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Revoicer.Text;

/// <summary>
/// A settings file in TOML, taken from the syntax tree, so that every word, also one given twice, has its place. Values
/// are asked for by <see cref="TomlSection"/>; all problems go into one list.
/// </summary>
internal sealed class TomlText
{
    // A settings file of this project has a few kilobytes; these bounds keep a hostile one from costing time or memory.
    private const int MostCharacters = 1 << 18;
    private const int LongestLine = 2000;

    private TomlText(TomlSection head, IReadOnlyList<TomlSection> sections)
    {
        Head = head;
        Sections = sections;
    }

    /// <summary>The words before the first heading.</summary>
    public TomlSection Head { get; }

    /// <summary>The parts under a heading, in the order of the file.</summary>
    public IReadOnlyList<TomlSection> Sections { get; }

    /// <summary>Takes a text apart; null, with problems added, where it is no TOML.</summary>
    public static TomlText? Read(string fileName, string text, List<Problem> problems)
    {
        var source = new SourceText(fileName, text.StartsWith('\uFEFF') ? text[1..] : text);
        if (TooLarge(source) is { } problem)
        {
            problems.Add(problem);
            return null;
        }

        try
        {
            var tree = SyntaxParser.Parse(source.Text, fileName, false);
            problems.AddRange(SyntaxProblems(tree, source));
            return problems.Count > 0 ? null : Of(tree, source, problems);
        }
        catch (TomlException)
        {
            // The parser stops at 64 brackets inside each other instead of using up the stack.
            problems.Add(new Problem(Place.WholeFile(fileName), "brackets stand too deep inside each other", "at most three deep"));
            return null;
        }
        catch (ArgumentOutOfRangeException)
        {
            // The parser throws where the file ends in the middle of an escape.
            problems.Add(new Problem(source.At(source.Text.Length - 1, 1), "the file ends inside an escape", "the end of the text and its quotation mark"));
            return null;
        }
    }

    private static Problem? TooLarge(SourceText source)
    {
        if (source.Text.Length > MostCharacters)
        {
            return new Problem(
                Place.WholeFile(source.Name),
                FormattableString.Invariant($"the file has {source.Text.Length} characters"),
                FormattableString.Invariant($"at most {MostCharacters}"));
        }

        var longest = source.Text.Split('\n').Max(line => line.Length);
        return longest <= LongestLine ? null : new Problem(
            Place.WholeFile(source.Name),
            FormattableString.Invariant($"a line has {longest} characters"),
            FormattableString.Invariant($"at most {LongestLine} a line"));
    }

    // One problem a line: what the parser says after the first is mostly its own confusion.
    private static IEnumerable<Problem> SyntaxProblems(DocumentSyntax tree, SourceText source) => tree.Diagnostics
        .Where(d => d.Kind == DiagnosticMessageKind.Error)
        .Select(d => source.At(d.Span.Start.Offset, 1))
        .DistinctBy(p => p.Line)
        .OrderBy(p => p.Line)
        .Select(p => new Problem(p, Misplaced(p), "a line like word = value with text in quotes, or a heading in brackets"));

    private static string Misplaced(Place place)
    {
        if (place.Column > place.LineText.Length)
        {
            return "the line ends too early";
        }

        var found = place.LineText[place.Column - 1];
        return char.IsControl(found) || char.IsSurrogate(found)
            ? FormattableString.Invariant($"the character U+{(int)found:X4} cannot stand here")
            : $"'{found}' cannot stand here";
    }

    private static TomlText Of(DocumentSyntax tree, SourceText source, List<Problem> problems)
    {
        var head = new TomlSection("", source.At(0, 1), false, tree.KeyValues, source, problems);
        var sections = new List<TomlSection>();
        foreach (var table in tree.Tables)
        {
            var name = table.Name!;
            sections.Add(new TomlSection(
                Dotted(name),
                source.At(name.Span.Start.Offset, name.Span.Length),
                table is TableArraySyntax,
                table.Items.OfType<KeyValueSyntax>(),
                source,
                problems));
        }

        return new TomlText(head, sections);
    }

    /// <summary>A key without quotes and blanks, dots kept: "bell.partial".</summary>
    internal static string Dotted(KeySyntax key) =>
        string.Join('.', key.DotKeys.Select(d => d.Key).Prepend(key.Key).Select(Bare));

    private static string Bare(BareKeyOrStringValueSyntax? key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => "",
    };
}
