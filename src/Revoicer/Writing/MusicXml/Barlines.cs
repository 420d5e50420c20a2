using System.Globalization;

namespace Revoicer.Writing.MusicXml;

/// <summary>Writes the bar lines that say more than a plain one.</summary>
internal static class Barlines
{
    /// <summary>The line before a bar, where a repeat or an ending begins.</summary>
    public static void Left(XmlText xml, PaperBar paper)
    {
        if (!paper.OpensRepeat && paper.EndingBegins.Count == 0)
        {
            return;
        }

        xml.Element(
            "barline",
            () =>
            {
                if (paper.OpensRepeat)
                {
                    xml.Text("bar-style", "heavy-light");
                }

                if (paper.EndingBegins.Count > 0)
                {
                    var numbers = Numbers(paper.EndingBegins, ",");
                    xml.Text("ending", Numbers(paper.EndingBegins, ". ") + ".", "number", numbers, "type", "start");
                }

                if (paper.OpensRepeat)
                {
                    xml.Empty("repeat", "direction", "forward");
                }
            },
            "location",
            "left");
    }

    /// <summary>The line after a bar, where a section, an ending or a repeat ends, or the score.</summary>
    public static void Right(XmlText xml, PaperBar paper, bool isLast)
    {
        var closes = paper.Times > 0;
        if (!closes && !isLast && !paper.EndsSection && paper.EndingEnds.Count == 0)
        {
            return;
        }

        xml.Element(
            "barline",
            () =>
            {
                xml.Text("bar-style", closes || isLast ? "light-heavy" : paper.EndsSection ? "light-light" : "regular");
                if (paper.EndingEnds.Count > 0)
                {
                    xml.Empty("ending", "number", Numbers(paper.EndingEnds, ","), "type", closes ? "stop" : "discontinue");
                }

                if (closes)
                {
                    Repeat(xml, paper);
                }
            },
            "location",
            "right");
    }

    // How often is said only of a repeat without endings, whose numbers say it otherwise, and only where it is not twice.
    private static void Repeat(XmlText xml, PaperBar paper)
    {
        if (paper.Times > 2 && paper.EndingEnds.Count == 0)
        {
            xml.Empty("repeat", "direction", "backward", "times", paper.Times.ToString(CultureInfo.InvariantCulture));
        }
        else
        {
            xml.Empty("repeat", "direction", "backward");
        }
    }

    private static string Numbers(IEnumerable<int> numbers, string between) =>
        string.Join(between, numbers.Select(n => n.ToString(CultureInfo.InvariantCulture)));
}
