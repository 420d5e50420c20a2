using System.CommandLine.Parsing;
using System.Globalization;

namespace Revoicer.Cli.Options;

/// <summary>Reads numbers that were typed.</summary>
internal static class Numbers
{
    /// <summary>The number within bounds, with a point before decimals; null, with an error added, where it is none.</summary>
    /// <param name="result">What was typed behind the option.</param>
    /// <param name="option">The option's name.</param>
    /// <param name="what">What it should be: "tempo".</param>
    /// <param name="lowest">The least it may be.</param>
    /// <param name="highest">The most it may be.</param>
    /// <param name="unit">What it counts, with a blank before it; may be empty.</param>
    public static double? Within(ArgumentResult result, string option, string what, double lowest, double highest, string unit)
    {
        var text = result.Tokens[0].Value;
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= lowest && number <= highest)
        {
            return number;
        }

        result.AddError(string.Create(CultureInfo.InvariantCulture, $"{option}: '{text}' is no {what}; expected a number from {lowest} to {highest}{unit}, with a point before decimals"));
        return null;
    }
}
