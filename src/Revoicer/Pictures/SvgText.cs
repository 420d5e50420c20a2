using System.Text;
using System.Xml.Linq;

namespace Revoicer.Pictures;

/// <summary>Tidies the SVG that the drawing library writes.</summary>
internal static class SvgText
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>
    /// The same picture, so that it can be scaled, reads the same whatever was drawn before it, stays legible where the
    /// font is absent, and says each thing once.
    /// </summary>
    /// <param name="xml">An SVG document.</param>
    /// <returns>The document, UTF-8, lines ending in \n.</returns>
    public static byte[] Tidy(string xml)
    {
        var picture = XElement.Parse(xml);
        picture.SetAttributeValue("viewBox", $"0 0 {picture.Attribute("width")!.Value} {picture.Attribute("height")!.Value}");
        ShareClips(picture);
        foreach (var words in picture.Descendants(Svg + "text"))
        {
            TidyWords(words);
        }

        return Encoding.UTF8.GetBytes(picture.ToString().ReplaceLineEndings("\n") + "\n");
    }

    // The library numbers its clips on from picture to picture and writes the same one anew for every mark.
    private static void ShareClips(XElement picture)
    {
        var shared = new Dictionary<string, string>();
        var renamed = new Dictionary<string, string>();
        foreach (var clip in picture.Descendants(Svg + "clipPath").ToArray())
        {
            var shape = string.Concat(clip.Elements());
            var isNew = shared.TryAdd(shape, $"clip{shared.Count}");
            renamed[$"url(#{clip.Attribute("id")!.Value})"] = $"url(#{shared[shape]})";
            clip.SetAttributeValue("id", shared[shape]);
            if (!isNew)
            {
                clip.Remove();
            }
        }

        foreach (var use in picture.Descendants().Attributes("clip-path"))
        {
            use.Value = renamed[use.Value];
        }
    }

    // The library ends its lists of places with a comma, which SVG does not allow, and breaks the line around the words.
    // Where the font is absent, one as wide takes its place, or any without serifs.
    private static void TidyWords(XElement words)
    {
        foreach (var places in words.Attributes().Where(a => a.Name == "x" || a.Name == "y"))
        {
            places.Value = places.Value.TrimEnd(' ', ',');
        }

        words.Attribute("font-family")!.Value += ", Verdana, sans-serif";
        words.Value = words.Value.Trim();
    }
}
