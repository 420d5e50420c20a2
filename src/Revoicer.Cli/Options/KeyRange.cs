using System.Globalization;

namespace Revoicer.Cli.Options;

/// <summary>The keys to be compared, in semitones from the written one.</summary>
/// <param name="From">The lowest.</param>
/// <param name="To">The highest; not below the lowest.</param>
internal sealed record KeyRange(int From, int To)
{
    private const int Furthest = 11;

    /// <summary>The written key alone.</summary>
    public static KeyRange Written { get; } = new(0, 0);

    /// <summary>Reads "-5..6", or one number; null where it is neither, or leaves -11 to +11.</summary>
    public static KeyRange? Parse(string text)
    {
        var ends = text.Split("..");
        return ends.Length <= 2 && Number(ends[0]) is { } from && Number(ends[^1]) is { } to && from <= to ? new KeyRange(from, to) : null;
    }

    private static int? Number(string text) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && Math.Abs((long)number) <= Furthest ? number : null;
}
