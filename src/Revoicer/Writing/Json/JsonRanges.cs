using System.Text.Json;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>Reads numbers within ranges that no arrangement leaves, and in which all later arithmetic is safe.</summary>
internal static class JsonRanges
{
    /// <summary>The highest count of anything.</summary>
    public const int MostOfAnything = 1_000_000;

    /// <summary>The largest price in thousandths.</summary>
    public const long LargestPrice = 1_000_000_000_000_000;

    // A day and a minute in seconds.
    private const double LongestTime = 86_400;
    private const double LongestLead = 60;
    private const double LargestLevel = 200;
    private const double HighestFrequency = 100_000;
    private const double LargestFigure = 1e12;

    public static Seconds Time(this JsonFields fields, string name) => new(fields.Number(name, 0, LongestTime));

    public static Seconds Lead(this JsonFields fields, string name) => new(fields.Number(name, 0, LongestLead));

    public static Decibels Level(this JsonFields fields, string name) => new(fields.Number(name, -LargestLevel, LargestLevel));

    public static Hertz Frequency(this JsonFields fields, string name) => new(fields.Number(name, 0, HighestFrequency));

    public static double Figure(this JsonFields fields, string name) => fields.Number(name, -LargestFigure, LargestFigure);

    public static int Count(this JsonFields fields, string name) => (int)fields.Whole(name, 0, MostOfAnything);

    public static long Price(this JsonFields fields, string name) => fields.Whole(name, -LargestPrice, LargestPrice);

    public static long? PriceOrNull(this JsonFields fields, string name) => fields.WholeOrNull(name, -LargestPrice, LargestPrice);

    /// <summary>One of a few names.</summary>
    /// <param name="fields">The members.</param>
    /// <param name="name">Which of them.</param>
    /// <param name="find">What has a name; null for one that is none of them.</param>
    /// <param name="expected">The names, as a clause.</param>
    public static T Named<T>(this JsonFields fields, string name, Func<string, T?> find, string expected)
        where T : struct
    {
        if (fields.Take(name) is not { } value)
        {
            return default;
        }

        if (find(fields.Text(value)) is { } found)
        {
            return found;
        }

        fields.RefuseText(value, expected);
        return default;
    }
}
