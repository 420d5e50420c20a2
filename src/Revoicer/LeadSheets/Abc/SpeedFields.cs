using System.Globalization;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Reads what stands behind "L:" and "Q:".</summary>
internal static class SpeedFields
{
    // What the arrangement file can hold (docs/files.md): quarter notes a minute.
    private const double Slowest = 4;
    private const double Quickest = 6000;

    private const string WhatASpeedIs = "such as 1/4=96, from 4 to 6000 quarter notes a minute";

    /// <summary>The unit of note lengths; null with a problem where it cannot be read.</summary>
    public static Beats? Unit(AbcPiece field, Remarks remarks)
    {
        if (NoteValue(field.Text) is { } unit)
        {
            return unit;
        }

        remarks.Refuse(field.Where, $"'{Quoted.Text(field.Text)}' is no unit of length", "such as 1/8; halves of a whole note down to 1/512");
        return null;
    }

    /// <summary>The speed; null where the field gives only words, and with a problem where it cannot be read.</summary>
    /// <param name="field">What stands behind the colon.</param>
    /// <param name="unit">The unit of length, for the old form that names no note value.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static Tempo? Tempo(AbcPiece field, Beats unit, Remarks remarks)
    {
        var plain = WithoutQuoted(field.Text).Trim();
        if (plain.Length == 0)
        {
            remarks.Warn(field.Where, $"'{Quoted.Text(field.Text)}' names no speed", "such as 1/4=96 beside the words");
            return null;
        }

        var sides = plain.Split('=');
        var counted = sides.Length == 1 ? unit : sides.Length == 2 ? Counted(sides[0].Trim(), unit) : null;
        var isNumber = double.TryParse(sides[^1].Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var perMinute);
        if (counted is { } value && isNumber && value.Quarters * perMinute is >= Slowest and <= Quickest)
        {
            return new Tempo(value, perMinute);
        }

        remarks.Refuse(field.Where, $"'{Quoted.Text(field.Text)}' is no speed", WhatASpeedIs);
        return null;
    }

    // Several note values are counted together: "1/4 3/8 1/4 3/8=40". The old forms "C" and "C3" count units.
    private static Beats? Counted(string text, Beats unit)
    {
        if (text.StartsWith('C'))
        {
            var units = text.Length == 1 ? 1 : int.TryParse(text[1..], NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0;
            return units is >= 1 and <= 16 ? unit * units : null;
        }

        var values = text.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries).Select(NoteValue).ToList();
        return values.Count is 0 or > 4 || values.Contains(null) ? null : values.Aggregate(Beats.Zero, (sum, v) => sum + v!.Value);
    }

    private static Beats? NoteValue(string text)
    {
        var cursor = new AbcCursor(text, Place.WholeFile(""));
        var upper = cursor.TakeNumber();
        var lower = cursor.Take('/') ? cursor.TakeNumber() : 1;
        return cursor.IsAtEnd && upper is >= 1 and <= 16 && lower is >= 1 and <= 512 && int.IsPow2(lower.Value)
            ? Beats.OfQuarters(4L * upper.Value, lower.Value)
            : null;
    }

    private static string WithoutQuoted(string text)
    {
        var parts = text.Split('"');
        return string.Join(' ', parts.Where((_, i) => i % 2 == 0));
    }
}
