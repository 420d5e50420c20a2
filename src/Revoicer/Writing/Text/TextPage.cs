using System.Text;

namespace Revoicer.Writing.Text;

/// <summary>Plain text in lines of at most <see cref="Width"/> characters that end with \n.</summary>
internal sealed class TextPage
{
    public const int Width = 100;

    private const int LabelWidth = 13;

    private static readonly HashSet<string> Units = ["s", "Hz", "dB", "%"];

    private readonly StringBuilder _text = new();

    public override string ToString() => _text.ToString();

    public void Blank() => _text.Append('\n');

    /// <summary>A line underlined to its length.</summary>
    public void Title(string title, char underline)
    {
        var from = _text.Length;
        Paragraph(title);
        var longest = _text.ToString(from, _text.Length - from).Split('\n').Max(l => l.Length);
        _text.Append(underline, longest).Append('\n');
    }

    /// <summary>A label at the margin and its text beside it.</summary>
    public void Entry(string label, string text) => Flow(label.PadRight(LabelWidth), LabelWidth, text);

    /// <summary>Running text, all lines at an indent, later ones at a deeper one where given.</summary>
    public void Paragraph(string text, int indent = 0, int hanging = 0) =>
        Flow(new string(' ', indent), indent + hanging, text);

    // Blanks and control characters in names from outside end a word, so that no name can break the page. A number and
    // its unit stay together.
    private static IEnumerable<string> Words(string text, int longest)
    {
        var words = new List<string>();
        var plain = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        foreach (var word in plain.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && char.IsAsciiDigit(words[^1][^1]) && Units.Contains(word.TrimEnd('.', ',', ';', ':', ')')))
            {
                words[^1] += " " + word;
            }
            else
            {
                words.Add(word);
            }
        }

        return words.SelectMany(word => Pieces(word, longest));
    }

    private static IEnumerable<string> Pieces(string word, int longest)
    {
        while (word.Length > longest)
        {
            var cut = char.IsHighSurrogate(word[longest - 1]) ? longest - 1 : longest;
            yield return word[..cut];
            word = word[cut..];
        }

        yield return word;
    }

    private void Flow(string start, int indent, string text)
    {
        var line = new StringBuilder(start);
        var isEmpty = true;
        foreach (var word in Words(text, Width - Math.Max(indent, start.Length)))
        {
            if (!isEmpty && line.Length + 1 + word.Length > Width)
            {
                _text.Append(line).Append('\n');
                line.Clear().Append(' ', indent);
                isEmpty = true;
            }

            line.Append(isEmpty ? "" : " ").Append(word);
            isEmpty = false;
        }

        _text.Append(line.ToString().TrimEnd()).Append('\n');
    }
}
