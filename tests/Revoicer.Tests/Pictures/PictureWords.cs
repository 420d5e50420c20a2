using System.Globalization;
using System.Xml.Linq;

namespace Revoicer.Tests.Pictures;

/// <summary>Words of a picture and the room that they take on the sheet, in its units.</summary>
internal sealed record PictureWords(string Text, double Size, double Left, double Top, double Right, double Bottom)
{
    // Of the size of the letters: how far they reach above and below their line, and how broad the last one is at most; DejaVu
    // Sans, looked at.
    private const double Above = 0.73;
    private const double Below = 0.2;
    private const double Broad = 0.65;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>All words, each with the part of the sheet on which they may stand.</summary>
    public static IEnumerable<(PictureWords Words, PictureWords Room)> In(XElement svg) =>
        svg.Descendants(Svg + "text").Where(t => t.Value.Length > 0).Select(t => (Of(t), RoomOf(svg, t)));

    /// <summary>Whether two cover each other, but for a hair.</summary>
    public bool Overlaps(PictureWords other) =>
        Left < other.Right - 0.5 && other.Left < Right - 0.5 && Top < other.Bottom - 0.5 && other.Top < Bottom - 0.5;

    /// <summary>Whether it lies inside another.</summary>
    public bool IsInside(PictureWords room) => Left >= room.Left && Right <= room.Right && Top >= room.Top && Bottom <= room.Bottom;

    // Letters have a place each, along the line; a title at the side is turned by a quarter.
    private static PictureWords Of(XElement text)
    {
        var size = Numbers(text.Attribute("font-size")!.Value)[0];
        var places = Numbers(text.Attribute("x")!.Value);
        var line = Numbers(text.Attribute("y")!.Value)[0];
        var (from, to) = (places[0], places[^1] + (Broad * size));
        var (above, below) = (line - (Above * size), line + (Below * size));
        var moved = text.Attribute("transform")?.Value ?? "translate(0 0)";
        var numbers = Numbers(moved);
        return moved.StartsWith("matrix(0 -1 1 0", StringComparison.Ordinal)
            ? new PictureWords(text.Value, size, numbers[4] + above, numbers[5] - to, numbers[4] + below, numbers[5] - from)
            : new PictureWords(text.Value, size, numbers[0] + from, numbers[1] + above, numbers[0] + to, numbers[1] + below);
    }

    private static PictureWords RoomOf(XElement svg, XElement text)
    {
        var clip = text.Ancestors().Select(a => a.Attribute("clip-path")?.Value).FirstOrDefault(c => c is not null);
        var rect = clip is null ? svg : svg.Descendants(Svg + "clipPath").Single(c => clip == $"url(#{c.Attribute("id")!.Value})").Elements().Single();
        double Number(string name) => rect.Attribute(name) is { } found && rect != svg || name is "width" or "height" ? Numbers(rect.Attribute(name)!.Value)[0] : 0;
        return new PictureWords("", 0, Number("x"), Number("y"), Number("x") + Number("width"), Number("y") + Number("height"));
    }

    private static double[] Numbers(string text) =>
        [.. text.Split([' ', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries).Where(p => p[0] is '-' or '.' || char.IsAsciiDigit(p[0])).Select(p => double.Parse(p, CultureInfo.InvariantCulture))];
}
