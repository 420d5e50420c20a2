namespace Revoicer.Prices;

/// <summary>Rounding of prices: every term is a whole number of thousandths of a clash unit before anything is added.</summary>
internal static class Thousandths
{
    /// <summary>A strike, a move or a bell that cannot be: 10,000 clash units, more than any two voicings of a slot differ.</summary>
    public const int Forbidden = 10_000_000;

    /// <summary>
    /// The most that what cannot be is counted up to where a slot is heard again and again: more than what two voicings
    /// differ by over a thousand hearings, and little enough that the strokes of a chord together do not run over.
    /// </summary>
    public const int MostForbidden = 15 * Forbidden;

    public static int Of(double clashUnits) => (int)Math.Round(clashUnits * 1000, MidpointRounding.AwayFromZero);
}
