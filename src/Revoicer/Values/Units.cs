using System.Globalization;

namespace Revoicer.Values;

/// <summary>A frequency in hertz; positive.</summary>
public readonly record struct Hertz(double Value) : IComparable<Hertz>
{
    /// <inheritdoc/>
    public int CompareTo(Hertz other) => Value.CompareTo(other.Value);

    /// <summary>Rounded to whole hertz, for reading: "313 Hz".</summary>
    public override string ToString() => Value.ToString("0", CultureInfo.InvariantCulture) + " Hz";
}

/// <summary>A time, or a length of time, in seconds.</summary>
public readonly record struct Seconds(double Value) : IComparable<Seconds>
{
    /// <summary>No time at all.</summary>
    public static readonly Seconds Zero = new(0);

    /// <summary>Without end: until everything has died away.</summary>
    public static readonly Seconds Forever = new(double.PositiveInfinity);

    /// <inheritdoc/>
    public int CompareTo(Seconds other) => Value.CompareTo(other.Value);

    /// <summary>The sum.</summary>
    public static Seconds operator +(Seconds a, Seconds b) => new(a.Value + b.Value);

    /// <summary>The difference.</summary>
    public static Seconds operator -(Seconds a, Seconds b) => new(a.Value - b.Value);

    /// <summary>Scaled by a number without unit.</summary>
    public static Seconds operator *(Seconds a, double factor) => new(a.Value * factor);

    /// <summary>Whether a is the shorter.</summary>
    public static bool operator <(Seconds a, Seconds b) => a.Value < b.Value;

    /// <summary>Whether a is the longer.</summary>
    public static bool operator >(Seconds a, Seconds b) => a.Value > b.Value;

    /// <summary>Whether a is not the longer.</summary>
    public static bool operator <=(Seconds a, Seconds b) => a.Value <= b.Value;

    /// <summary>Whether a is not the shorter.</summary>
    public static bool operator >=(Seconds a, Seconds b) => a.Value >= b.Value;

    /// <summary>To a hundredth of a second, for reading: "1.43 s".</summary>
    public override string ToString() => Value.ToString("0.00", CultureInfo.InvariantCulture) + " s";
}

/// <summary>A level or a difference of levels in decibels.</summary>
public readonly record struct Decibels(double Value) : IComparable<Decibels>
{
    /// <summary>Unchanged level.</summary>
    public static readonly Decibels Zero = new(0);

    /// <summary>The factor on an amplitude: 10^(dB/20).</summary>
    public double AmplitudeFactor => Math.Pow(10, Value / 20);

    /// <inheritdoc/>
    public int CompareTo(Decibels other) => Value.CompareTo(other.Value);

    /// <summary>To a tenth of a decibel, for reading: "-3.5 dB"; never "-0.0 dB".</summary>
    public override string ToString() => (Math.Round(Value, 1) + 0.0).ToString("0.0", CultureInfo.InvariantCulture) + " dB";
}
