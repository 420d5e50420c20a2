using System.Globalization;
using System.Numerics;

namespace Revoicer.Music;

/// <summary>
/// A stretch or a point of musical time as an exact fraction of quarter notes: an eighth is 1/2, a dotted quarter 3/2.
/// The default value is zero.
/// </summary>
public readonly record struct Beats : IComparable<Beats>
{
    private readonly long _denominatorLessOne;

    private Beats(long numerator, long denominator)
    {
        Numerator = numerator;
        _denominatorLessOne = denominator - 1;
    }

    /// <summary>No time.</summary>
    public static Beats Zero => default;

    /// <summary>Above the line, in lowest terms; carries the sign.</summary>
    public long Numerator { get; }

    /// <summary>Below the line, in lowest terms; at least 1.</summary>
    public long Denominator => _denominatorLessOne + 1;

    /// <summary>The fraction as a number of quarter notes.</summary>
    public double Quarters => (double)Numerator / Denominator;

    /// <summary>A number of quarter notes, or a fraction of them.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The denominator is zero or negative.</exception>
    public static Beats OfQuarters(long numerator, long denominator = 1)
    {
        if (denominator <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(denominator), denominator, "a fraction of a quarter note has a positive denominator");
        }

        var common = (long)BigInteger.GreatestCommonDivisor(numerator, denominator);
        return new Beats(numerator / common, denominator / common);
    }

    /// <inheritdoc/>
    public int CompareTo(Beats other) => ((Int128)Numerator * other.Denominator).CompareTo((Int128)other.Numerator * Denominator);

    /// <summary>The sum.</summary>
    public static Beats operator +(Beats a, Beats b) =>
        OfQuarters(checked((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator)), checked(a.Denominator * b.Denominator));

    /// <summary>The difference.</summary>
    public static Beats operator -(Beats a, Beats b) => a + new Beats(-b.Numerator, b.Denominator);

    /// <summary>A whole number of times the stretch.</summary>
    public static Beats operator *(Beats a, long times) => OfQuarters(checked(a.Numerator * times), a.Denominator);

    /// <summary>An equal part of the stretch.</summary>
    public static Beats operator /(Beats a, long parts) => OfQuarters(a.Numerator, checked(a.Denominator * parts));

    /// <summary>How many whole times b goes into a, for a not negative.</summary>
    public static long WholeTimes(Beats a, Beats b) => (long)((Int128)a.Numerator * b.Denominator / ((Int128)b.Numerator * a.Denominator));

    /// <summary>Whether a is the shorter or earlier.</summary>
    public static bool operator <(Beats a, Beats b) => a.CompareTo(b) < 0;

    /// <summary>Whether a is the longer or later.</summary>
    public static bool operator >(Beats a, Beats b) => a.CompareTo(b) > 0;

    /// <summary>Whether a is not the longer or later.</summary>
    public static bool operator <=(Beats a, Beats b) => a.CompareTo(b) <= 0;

    /// <summary>Whether a is not the shorter or earlier.</summary>
    public static bool operator >=(Beats a, Beats b) => a.CompareTo(b) >= 0;

    /// <summary>"3", "1/2".</summary>
    public override string ToString() => Denominator == 1
        ? Numerator.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}");
}
