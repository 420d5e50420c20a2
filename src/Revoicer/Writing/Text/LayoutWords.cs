using Revoicer.Arrangements;
using Revoicer.Playing;

namespace Revoicer.Writing.Text;

/// <summary>Tells where the tune lies, and of two layouts that were weighed which was taken and why.</summary>
internal static class LayoutWords
{
    /// <summary>A clause for the first page.</summary>
    public static string Of(Arrangement arrangement, ChosenLayout layout)
    {
        var place = layout.Tune == TuneLayout.Above
            ? "the tune in the hands, over the chords"
            : "the tune in the pedals and the low manual, under the chords, whose bass it is, so that nothing is asked of another bass";
        return place + Weighed(arrangement, layout);
    }

    private static string Weighed(Arrangement arrangement, ChosenLayout layout)
    {
        var otherwise = layout.Tune == TuneLayout.Above ? "below" : "above";
        if (layout.Obstacle is { } obstacle)
        {
            return $"; with the tune {otherwise} there is no draft: {obstacle.TrimEnd('.')}";
        }

        if (layout.Other is not { } other)
        {
            return "";
        }

        var totals = arrangement.Totals;
        var verdict = layout.Price == other.Price ? "as cheap as" : "cheaper than";
        return $"; that is {verdict} the tune {otherwise}: price with the tune {Sentences.Price(layout.Price)} against {Sentences.Price(other.Price)}, "
            + $"clash of the chords {Sentences.Figure(totals.ClashDose)} against {Sentences.Figure(other.ClashDose)} "
            + $"(median {Sentences.Figure(totals.MedianClash)} against {Sentences.Figure(other.MedianClash)}), "
            + $"of the tune with itself {Sentences.Figure(totals.TuneDose)} against {Sentences.Figure(other.TuneDose)}";
    }
}
