using System.Globalization;
using System.Xml.Linq;
using Revoicer.Music;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Looks into elements by their local names: some programs put a namespace on them.</summary>
internal static class Elements
{
    // Keeps exact arithmetic far within 64 bits.
    private const int MostDigits = 9;
    private const int MostDecimals = 6;

    /// <summary>The first child of a name; null where there is none.</summary>
    public static XElement? Child(this XElement element, string name) => element.Children(name).FirstOrDefault();

    /// <summary>All children of a name.</summary>
    public static IEnumerable<XElement> Children(this XElement element, string name) => element.Elements().Where(e => e.Name.LocalName == name);

    /// <summary>Whether a child of a name is there.</summary>
    public static bool Has(this XElement element, string name) => element.Child(name) is not null;

    /// <summary>The text of a child without blanks around it; null where there is none.</summary>
    public static string? ChildText(this XElement element, string name) => element.Child(name)?.Value.Trim();

    /// <summary>An attribute's text; null where there is none.</summary>
    public static string? Text(this XElement element, string attribute) => element.Attribute(attribute)?.Value.Trim();

    /// <summary>A whole number of at most nine digits; null where the text is none.</summary>
    public static int? Whole(string? text) =>
        text is { Length: > 0 and <= MostDigits + 1 }
        && int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole)
        && Math.Abs((long)whole) < 1_000_000_000
            ? whole
            : null;

    /// <summary>A decimal number as an exact fraction; null where the text is none, or has more than nine digits.</summary>
    public static Beats? Fraction(string? text)
    {
        if (text is null || text.Length > MostDigits + 2)
        {
            return null;
        }

        var parts = text.TrimStart('-', '+').Split('.');
        var decimals = parts.Length == 2 ? parts[1] : "";
        if (parts.Length > 2 || decimals.Length > MostDecimals || Whole(parts[0].Length == 0 ? "0" : parts[0]) is not { } whole || !decimals.All(char.IsAsciiDigit))
        {
            return null;
        }

        var scale = (long)Math.Pow(10, decimals.Length);
        var value = Beats.OfQuarters((whole * scale) + (decimals.Length > 0 ? long.Parse(decimals, CultureInfo.InvariantCulture) : 0), scale);
        return text.StartsWith('-') ? value * -1 : value;
    }
}
