using System.Globalization;
using Revoicer.Sounds;

namespace Revoicer.Writing.Text;

/// <summary>A sound setting in words: every number of its file with what it means.</summary>
public static class SoundText
{
    /// <summary>The text: lines of at most 100 characters ending in \n.</summary>
    public static string Of(Sound sound)
    {
        var page = new TextPage();
        page.Title(sound.Name, '=');
        page.Blank();
        page.Paragraph(
            "Prices are in clash units: 100 is C4 E4 G4 as heard, struck together and left to die away. All numbers are "
            + "estimates. What is dear is avoided, what costs 0 does not matter.");
        foreach (var part in SoundWords.All.GroupBy(w => w.Part))
        {
            page.Blank();
            page.Paragraph($"[{part.Key}]");
            foreach (var word in part)
            {
                page.Paragraph($"{word.Word} = {Number(word, sound)}: {word.Meaning}", indent: 2, hanging: 4);
            }
        }

        return page.ToString();
    }

    /// <summary>A sound's name and what its file says of itself: one paragraph, all lines after the first at an indent.</summary>
    /// <param name="name">The name.</param>
    /// <param name="about">What the file says of itself.</param>
    /// <param name="indent">Blanks before the later lines.</param>
    public static string InShort(string name, string about, int indent)
    {
        var page = new TextPage();
        page.Paragraph($"{name}: {about}", hanging: indent);
        return page.ToString();
    }

    // "0.06 s", but "0.8, a share".
    private static string Number(SoundWord word, Sound sound)
    {
        var comma = word.Unit.StartsWith("a ", StringComparison.Ordinal) ? "," : "";
        return string.Create(CultureInfo.InvariantCulture, $"{word.Value(sound)}{comma} {word.Unit}");
    }
}
