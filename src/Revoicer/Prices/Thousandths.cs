namespace Revoicer.Prices;

/// <summary>Rounding of prices: every term is a whole number of thousandths of a clash unit before anything is added.</summary>
internal static class Thousandths
{
    /// <summary>A strike, a move or a bell that cannot be: 10,000 clash units, dearer than any two voicings of a slot differ.</summary>
    public const int Forbidden = 10_000_000;

    public static int Of(double clashUnits) => (int)Math.Round(clashUnits * 1000, MidpointRounding.AwayFromZero);
}
