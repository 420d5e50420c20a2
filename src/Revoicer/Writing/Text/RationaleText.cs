using Revoicer.Arrangements;

namespace Revoicer.Writing.Text;

/// <summary>
/// The rationale as plain text: a page about the whole, then every chord as heard, with why it was voiced so, so that the
/// player can disagree.
/// </summary>
public static class RationaleText
{
    /// <summary>
    /// The text: lines of at most 100 characters ending in \n. Bells are named by the notes the player reads; the strike
    /// note stands in brackets where a frequency is given. Figures have one decimal; all digits are in the JSON file.
    /// </summary>
    /// <param name="arrangement">What is explained; at least one bar and one tempo.</param>
    public static string Of(Arrangement arrangement)
    {
        var page = new TextPage();
        new RationaleFirstPage(arrangement).WriteTo(page);
        page.Blank();
        page.Title("Chord by chord", '-');
        var chords = new RationaleChord(arrangement);
        foreach (var choice in arrangement.Choices)
        {
            page.Blank();
            chords.Write(choice, page);
        }

        if (arrangement.Choices.Count == 0)
        {
            page.Paragraph("There is no chord in this piece.");
        }

        return page.ToString();
    }
}
