namespace Revoicer.Pictures;

/// <summary>Draws what the clash model says, for print at a width of 16 cm; black on white, so that no colour is needed.</summary>
public static class ClashPictures
{
    private static readonly string NoFont =
        $"the pictures cannot be lettered: none of the fonts {string.Join(", ", Lettering.Families)} is installed; install one of them and try again";

    /// <summary>
    /// Two spectra back to back over one axis of frequency, the lower bell above it: levels at the stroke, what is left of
    /// each partial after a second, names and T60, and the two partials most at odds.
    /// </summary>
    public static Drawing Spectra(TwoSpectra spectra) => Draw(family => SpectraDrawing.Draw(spectra, family), Lettering.Family());

    /// <summary>A line for every interval over the strike note of the lower bell.</summary>
    public static Drawing Intervals(IntervalClashes clashes) => Draw(family => IntervalDrawing.Draw(clashes, family), Lettering.Family());

    /// <summary>Draws with a font, or tells that there is none.</summary>
    internal static Drawing Draw(Func<string, Picture> draw, string? family) =>
        family is null ? new Drawing.NoFont(NoFont) : new Drawing.Made(draw(family));
}
