using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>A line of an ABC file that is neither empty nor a comment.</summary>
/// <param name="Text">The line without its comment and without blanks at its end.</param>
/// <param name="Where">The whole line.</param>
internal sealed record AbcLine(string Text, Place Where)
{
    /// <summary>The letter of an information field, "K" for "K:G"; '+' where a field goes on; null where it is none.</summary>
    // "A:|" is a note and a repeat sign; no field begins with a bar line.
    public char? Field => Text.Length >= 2 && Text[1] == ':' && (char.IsAsciiLetter(Text[0]) || Text[0] == '+')
        && !(Text.Length > 2 && Text[2] is '|' or ':' && char.ToUpperInvariant(Text[0]) is (>= 'A' and <= 'G') or 'Z')
        ? Text[0]
        : null;

    /// <summary>Whether it begins with "%%": an instruction to some typesetter or player.</summary>
    public bool IsDirective => Text.StartsWith("%%", StringComparison.Ordinal);

    /// <summary>What stands behind the field's colon.</summary>
    public AbcPiece Value => AbcPiece.Of(Text[2..], Where.Part(2, Text.Length - 2));
}

/// <summary>A piece of a line, without blanks around it.</summary>
internal sealed record AbcPiece(string Text, Place Where)
{
    public static AbcPiece Of(string text, Place where)
    {
        var trimmed = text.Trim();
        return new AbcPiece(trimmed, where.Part(text.Length - text.TrimStart().Length, trimmed.Length));
    }

    /// <summary>Its words with their places; blanks inside quotation marks do not part words.</summary>
    public IReadOnlyList<AbcPiece> Words()
    {
        var words = new List<AbcPiece>();
        var start = 0;
        var isQuoted = false;
        for (var i = 0; i <= Text.Length; i++)
        {
            var ends = i == Text.Length || (!isQuoted && char.IsWhiteSpace(Text[i]));
            if (ends && i > start)
            {
                words.Add(new AbcPiece(Text[start..i], Where.Part(start, i - start)));
            }

            start = ends ? i + 1 : start;
            isQuoted ^= i < Text.Length && Text[i] == '"';
        }

        return words;
    }
}
