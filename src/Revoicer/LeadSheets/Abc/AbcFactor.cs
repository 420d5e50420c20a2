using Revoicer.Music;

namespace Revoicer.LeadSheets.Abc;

/// <summary>What stands behind a note to say how many units it lasts: "2", "/", "3/2".</summary>
internal readonly record struct AbcFactor(int Numerator, int Denominator)
{
    private const int Largest = 4096;

    /// <summary>One unit: nothing is written.</summary>
    public static AbcFactor One => new(1, 1);

    /// <summary>Takes a factor, 1 where nothing stands here; null where it is zero or too large or small.</summary>
    public static AbcFactor? Take(AbcCursor cursor)
    {
        var numerator = cursor.TakeNumber() ?? 1;
        var denominator = 1;
        while (cursor.Take('/'))
        {
            denominator = Math.Min(Largest + 1, denominator * Math.Min(Largest + 1, cursor.TakeNumber() ?? 2));
        }

        return numerator is >= 1 and <= Largest && denominator is >= 1 and <= Largest ? new AbcFactor(numerator, denominator) : null;
    }

    /// <summary>A length times a factor.</summary>
    public static Beats operator *(Beats length, AbcFactor factor) => length * factor.Numerator / factor.Denominator;
}
