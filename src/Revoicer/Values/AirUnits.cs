using System.Globalization;

namespace Revoicer.Values;

/// <summary>A length in metres.</summary>
public readonly record struct Metres(double Value)
{
    /// <summary>Rounded to whole metres, for reading: "100 m".</summary>
    public override string ToString() => Value.ToString("0", CultureInfo.InvariantCulture) + " m";
}

/// <summary>A temperature in degrees Celsius.</summary>
public readonly record struct Celsius(double Value)
{
    /// <summary>To a tenth of a degree, for reading: "15.0 degC".</summary>
    public override string ToString() => Value.ToString("0.0", CultureInfo.InvariantCulture) + " degC";
}

/// <summary>A share in percent: 60 is sixty of a hundred.</summary>
public readonly record struct Percent(double Value)
{
    /// <summary>Rounded to whole percent, for reading: "60 %".</summary>
    public override string ToString() => Value.ToString("0", CultureInfo.InvariantCulture) + " %";
}

/// <summary>A pressure in kilopascals.</summary>
public readonly record struct Kilopascals(double Value)
{
    /// <summary>To a tenth, for reading: "101.3 kPa".</summary>
    public override string ToString() => Value.ToString("0.0", CultureInfo.InvariantCulture) + " kPa";
}
