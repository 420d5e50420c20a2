using System.Globalization;
using System.Text;

namespace Revoicer.Text;

/// <summary>
/// Text from outside, made fit for a terminal: a character that a terminal would obey instead of showing it (control
/// characters, and those that turn the direction of writing) stands as its number, "\u001b". JSON writes it in the same
/// way, so a text of JSON keeps its meaning.
/// </summary>
public static class VisibleText
{
    // They join letters of some scripts and signs of one picture, and do nothing else.
    private const string Joiners = "\u200c\u200d";

    /// <summary>A text of several lines: tabs and line ends stay.</summary>
    public static string Of(string text) => Of(text, stay: "\t\n");

    /// <summary>A text that is to stay on one line: the ends of lines are shown too.</summary>
    public static string OneLine(string text) => Of(text, stay: "");

    private static string Of(string text, string stay)
    {
        var at = 0;
        while (at < text.Length && !IsObeyed(text, at, stay))
        {
            at++;
        }

        if (at == text.Length)
        {
            return text;
        }

        var shown = new StringBuilder(text, 0, at, text.Length + 16);
        for (; at < text.Length; at++)
        {
            if (!IsObeyed(text, at, stay))
            {
                shown.Append(text[at]);
                continue;
            }

            Append(shown, text[at]);
            if (char.IsSurrogatePair(text, at))
            {
                Append(shown, text[++at]);
            }
        }

        return shown.ToString();
    }

    // A character of two halves is told by its first.
    private static bool IsObeyed(string text, int at, string stay) =>
        CharUnicodeInfo.GetUnicodeCategory(text, at) is UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        && !stay.Contains(text[at]) && !Joiners.Contains(text[at]);

    private static void Append(StringBuilder shown, char c) => shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
}
