using System.Globalization;

namespace Revoicer.Text;

/// <summary>How messages quote what stands in a file.</summary>
internal static class Quoted
{
    // Longer pieces are cut, so that a hostile text does not fill the message.
    private const int Longest = 24;

    /// <summary>The text, cut where it is long, with invisible characters by their Unicode number.</summary>
    public static string Text(string piece)
    {
        var cut = piece.Length > Longest ? piece[..Longest] + "..." : piece;
        return string.Concat(cut.Select(c => IsVisible(c) ? c.ToString() : $"U+{(int)c:X4}"));
    }

    /// <summary>Whether a character looks the same in every font and leaves a terminal alone.</summary>
    public static bool IsVisible(char c) => char.GetUnicodeCategory(c) is not (
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.PrivateUse
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.OtherNotAssigned);
}
