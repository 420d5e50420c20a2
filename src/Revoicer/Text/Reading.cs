using Revoicer.Values;

namespace Revoicer.Text;

/// <summary>
/// Where something stands in a text.
/// </summary>
/// <param name="Source">The file's name as the player gave it, without folders of this machine added.</param>
/// <param name="Line">Line, from 1; 0 where the whole file is meant.</param>
/// <param name="Column">Column of the first character, from 1, in characters of the line.</param>
/// <param name="Length">How many characters are meant, at least 1 where a line is given.</param>
/// <param name="LineText">The whole line, to be shown above the carets.</param>
public sealed record Place(string Source, int Line, int Column, int Length, string LineText)
{
    /// <summary>A file as a whole.</summary>
    public static Place WholeFile(string source) => new(source, 0, 0, 0, "");

    /// <summary>A piece of the same line: an offset from this place's start, and a length.</summary>
    public Place Part(int offset, int length) => this with { Column = Column + offset, Length = Math.Max(1, length) };
}

/// <summary>
/// One thing wrong, or noteworthy, in a text: where, what was found, and what would be right.
/// </summary>
/// <param name="Where">The place.</param>
/// <param name="Found">What stands there, as a clause: "'H7' is no chord".</param>
/// <param name="Expected">What would be right there, as a clause without full stop: "a root from A to G".</param>
public sealed record Problem(Place Where, string Found, string Expected)
{
    // A line longer than this is shown in part, with so much before what is meant.
    private const int Widest = 100;
    private const int Before = 40;

    /// <summary>
    /// The message with its place, and the line with carets under what is meant; of a long line the part around it. Lines
    /// end with \n.
    /// </summary>
    public override string ToString()
    {
        var (source, found, expected) = (VisibleText.OneLine(Where.Source), VisibleText.OneLine(Found), VisibleText.OneLine(Expected));
        if (Where.Line == 0)
        {
            return $"{source}: {found}; expected {expected}\n";
        }

        var column = Where.Column - 1;
        var from = Where.LineText.Length <= Widest ? 0 : Math.Max(0, Math.Min(column - Before, Where.LineText.Length - Widest));
        var to = Math.Min(from + Widest, Where.LineText.Length);
        var (head, tail) = (from > 0 ? "..." : "", to < Where.LineText.Length ? "..." : "");

        // Tabs are kept in front of the carets, so that they stand under their text.
        var before = head + VisibleText.Of(Where.LineText[from..Math.Clamp(column, from, to)]);
        var meant = VisibleText.Of(Where.LineText[Math.Clamp(column, from, to)..Math.Clamp(column + Where.Length, from, to)]);
        var after = VisibleText.Of(Where.LineText[Math.Clamp(column + Where.Length, from, to)..to]);
        var indent = new string([.. before.Select(c => c == '\t' ? '\t' : ' ')]);
        return $"{source}:{Where.Line}:{Where.Column}: {found}; expected {expected}\n"
            + $"    {before}{meant}{after}{tail}\n    {indent}{new string('^', Math.Max(1, meant.Length))}\n";
    }
}

/// <summary>What reading a text gives: the value with warnings, or all the problems that stood in the way.</summary>
/// <typeparam name="T">The value.</typeparam>
public abstract record Reading<T>
{
    private Reading()
    {
    }

    /// <summary>The text could be read.</summary>
    /// <param name="Value">What it says.</param>
    /// <param name="Warnings">What was passed over or taken in one of several senses.</param>
    public sealed record Accepted(T Value, Items<Problem> Warnings) : Reading<T>;

    /// <summary>The text could not be read.</summary>
    /// <param name="Problems">All that is wrong, in order of place; at least one.</param>
    public sealed record Refused(Items<Problem> Problems) : Reading<T>;

    /// <summary>Read without warnings.</summary>
    public static Reading<T> Of(T value) => new Accepted(value, []);

    /// <summary>Refused for one problem.</summary>
    public static Reading<T> No(Place where, string found, string expected) => new Refused([new Problem(where, found, expected)]);
}
