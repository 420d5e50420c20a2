using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>The air between tower and listener, and how it dulls sound (ISO 9613-1:1993).</summary>
public sealed record Air
{
    // Reference pressure (kPa), reference temperature and triple point of water (K) of ISO 9613-1 (from memory).
    private const double ReferencePressure = 101.325;
    private const double ReferenceTemperature = 293.15;
    private const double TriplePoint = 273.16;

    /// <summary>Air of a temperature, humidity and pressure.</summary>
    /// <param name="temperature">-20..50 degrees, the range of the standard's formulas.</param>
    /// <param name="humidity">Relative, 10..100 %.</param>
    /// <param name="pressure">20..200 kPa.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public Air(Celsius temperature, Percent humidity, Kilopascals pressure)
    {
        Temperature = new Celsius(Within(temperature.Value, -20, 50, nameof(temperature)));
        Humidity = new Percent(Within(humidity.Value, 10, 100, nameof(humidity)));
        Pressure = new Kilopascals(Within(pressure.Value, 20, 200, nameof(pressure)));
    }

    /// <summary>A mild day: 15 degrees, 60 %, 101.325 kPa.</summary>
    public static Air Mild { get; } = new(new Celsius(15), new Percent(60), new Kilopascals(ReferencePressure));

    /// <summary>Temperature.</summary>
    public Celsius Temperature { get; }

    /// <summary>Relative humidity.</summary>
    public Percent Humidity { get; }

    /// <summary>Pressure.</summary>
    public Kilopascals Pressure { get; }

    /// <summary>What a pure tone loses on its way through the air, without spreading; not negative.</summary>
    /// <param name="frequency">Its frequency.</param>
    /// <param name="way">The length of the way.</param>
    public Decibels Loss(Hertz frequency, Metres way) => new(LossPerMetre(frequency.Value) * way.Value);

    // The formulas and constants of ISO 9613-1:1993 (from memory; checked against the table of ISO 9613-2); dB/m.
    private double LossPerMetre(double f)
    {
        var kelvin = Temperature.Value + 273.15;
        var warmth = kelvin / ReferenceTemperature;
        var pressure = Pressure.Value / ReferencePressure;
        var saturation = Math.Pow(10, (-6.8346 * Math.Pow(TriplePoint / kelvin, 1.261)) + 4.6151);
        var vapour = Humidity.Value * saturation / pressure;
        var oxygen = pressure * (24 + (4.04e4 * vapour * (0.02 + vapour) / (0.391 + vapour)));
        var nitrogen = pressure * Math.Pow(warmth, -0.5)
            * (9 + (280 * vapour * Math.Exp(-4.170 * (Math.Pow(warmth, -1 / 3.0) - 1))));
        var relaxation = (0.01275 * Math.Exp(-2239.1 / kelvin) / (oxygen + (f * f / oxygen)))
            + (0.1068 * Math.Exp(-3352 / kelvin) / (nitrogen + (f * f / nitrogen)));
        return 8.686 * f * f
            * ((1.84e-11 / pressure * Math.Sqrt(warmth)) + (Math.Pow(warmth, -2.5) * relaxation));
    }

    private static double Within(double value, double lowest, double highest, string name) =>
        value >= lowest && value <= highest
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"lies within {lowest}..{highest}");
}
