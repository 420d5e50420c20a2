using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>A metre as a tune states it.</summary>
/// <param name="Meter">The metre; null for free metre, "M:none".</param>
internal sealed record AbcMeter(Meter? Meter)
{
    /// <summary>The unit of note lengths where no "L:" gives one: 1/16 below 3/4, else 1/8 (standard 2.1, section 3.1.7).</summary>
    public Beats DefaultUnit => Meter is { } meter && meter.Bar < Beats.OfQuarters(3) ? Beats.OfQuarters(1, 4) : Beats.OfQuarters(1, 2);
}

/// <summary>Reads what stands behind "M:".</summary>
internal static class MeterField
{
    private const int LargestUpper = 64;

    /// <summary>The metre; null with a problem where it cannot be read.</summary>
    public static AbcMeter? Read(AbcPiece field, Remarks remarks)
    {
        switch (field.Text)
        {
            case "none":
                return new AbcMeter(null);
            case "C":
                return new AbcMeter(new Meter(4, 4));
            case "C|":
                return new AbcMeter(new Meter(2, 2));
        }

        if (Sum(field) is not { } meter)
        {
            remarks.Refuse(field.Where, $"'{Quoted.Text(field.Text)}' is no metre", "such as 4/4, 6/8, C, C| or none; the lower number 1, 2, 4, 8 or 16");
            return null;
        }

        if (field.Text.Contains('+', StringComparison.Ordinal))
        {
            remarks.Warn(field.Where, $"the groups of {field.Text} are not kept", $"read as {meter}");
        }

        return new AbcMeter(meter);
    }

    // "2+3/8", "(2+3)/8" and "5/8".
    private static Meter? Sum(AbcPiece field)
    {
        var cursor = new AbcCursor(field.Text, field.Where);
        var isBracketed = cursor.Take('(');
        var upper = 0;
        do
        {
            if (cursor.TakeNumber() is not { } part || part == 0)
            {
                return null;
            }

            upper = Math.Min(upper + part, LargestUpper + 1);
        }
        while (cursor.Take('+'));

        if (isBracketed != cursor.Take(')') || !cursor.Take('/') || cursor.TakeNumber() is not { } lower || !cursor.IsAtEnd)
        {
            return null;
        }

        // A whole note as beat is written in halves.
        var meter = lower == 1 ? new Meter(2 * upper, 2) : new Meter(upper, lower);
        return upper <= LargestUpper && meter.Lower is 2 or 4 or 8 or 16 ? meter : null;
    }
}
