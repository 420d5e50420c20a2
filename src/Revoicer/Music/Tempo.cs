using System.Globalization;
using Revoicer.Values;

namespace Revoicer.Music;

/// <summary>A speed: so many of a note value in a minute.</summary>
/// <param name="Unit">The counted note value; positive.</param>
/// <param name="PerMinute">How many in a minute; positive.</param>
public readonly record struct Tempo(Beats Unit, double PerMinute)
{
    /// <summary>Quarter notes in a minute.</summary>
    public double QuartersPerMinute => Unit.Quarters * PerMinute;

    /// <summary>How long a stretch lasts at this speed.</summary>
    public Seconds Of(Beats length) => new(length.Quarters * 60 / QuartersPerMinute);

    /// <summary>"84 dotted quarters a minute".</summary>
    public override string ToString() => $"{PerMinute.ToString("0.##", CultureInfo.InvariantCulture)} {UnitName}";

    private string UnitName => (Unit.Numerator, Unit.Denominator) switch
    {
        (4, 1) => "whole notes a minute",
        (2, 1) => "half notes a minute",
        (3, 1) => "dotted half notes a minute",
        (1, 1) => "quarter notes a minute",
        (3, 2) => "dotted quarter notes a minute",
        (1, 2) => "eighth notes a minute",
        (3, 4) => "dotted eighth notes a minute",
        _ => $"units of {Unit} quarter notes a minute",
    };
}
