using System.Globalization;
using Revoicer.Music;

namespace Revoicer.Writing.Text;

/// <summary>Small pieces of English that several parts of the rationale need.</summary>
internal static class Sentences
{
    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth"];

    /// <summary>A figure to one decimal; never "-0.0".</summary>
    public static string Figure(double value) => (Math.Round(value, 1) + 0.0).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>Thousandths of a clash unit as clash units.</summary>
    public static string Price(long thousandths) => Figure(thousandths / 1000.0);

    /// <summary>"first", "second", ..., then "7th", "21st".</summary>
    public static string Ordinal(int number) => number >= 1 && number <= Ordinals.Length
        ? Ordinals[number - 1]
        : number + ((number % 100) is >= 11 and <= 13 ? "th" : (number % 10) switch
        {
            1 => "st",
            2 => "nd",
            3 => "rd",
            _ => "th",
        });

    /// <summary>"one stroke", "3 strokes".</summary>
    public static string Count(int number, string singular, string plural) => number switch
    {
        0 => $"no {plural}",
        1 => $"one {singular}",
        _ => $"{number} {plural}",
    };

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string List(IReadOnlyList<string> parts) => parts.Count switch
    {
        0 => "",
        1 => parts[0],
        _ => $"{string.Join(", ", parts.Take(parts.Count - 1))} and {parts[^1]}",
    };

    /// <summary>The text with a capital at its beginning.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>The text as a sentence of its own: a capital first, a full stop last.</summary>
    public static string Whole(string text)
    {
        var trimmed = text.Trim();
        return Capital(trimmed) + (trimmed.EndsWith('.') || trimmed.EndsWith('!') || trimmed.EndsWith('?') ? "" : ".");
    }

    /// <summary>How what is heard lies to what is read: "an octave higher", "2 semitones lower".</summary>
    public static string Higher(Transposition transposition) => transposition.Semitones switch
    {
        0 => "at the same pitch",
        12 => "an octave higher",
        24 => "two octaves higher",
        -12 => "an octave lower",
        > 0 and var up => Count(up, "semitone", "semitones") + " higher",
        var down => Count(-down, "semitone", "semitones") + " lower",
    };
}
