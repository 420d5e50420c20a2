using System.Globalization;

namespace Revoicer.LeadSheets.Wishes;

/// <summary>The place of the sheet that a wish speaks of.</summary>
/// <param name="FromBar">The number of the first written bar, as reports number bars; 0 is a pickup.</param>
/// <param name="ToBar">The number of the last; the same where one bar is meant.</param>
/// <param name="Beat">The beat of the metre in that bar on which the chord begins, counted from 1; null for every chord that begins in the bars.</param>
public sealed record WishedPlace(int FromBar, int ToBar, double? Beat)
{
    // Reports give beats with two decimals.
    private const double Rounding = 0.006;

    /// <summary>The place in words: "bar 5 beat 1", "bars 9 to 12".</summary>
    public string Words => (FromBar == ToBar, Beat) switch
    {
        (true, { } beat) => string.Create(CultureInfo.InvariantCulture, $"{Bar(FromBar)} beat {beat:0.##}"),
        (true, null) => Bar(FromBar),
        _ => $"bars {FromBar} to {ToBar}",
    };

    /// <summary>Whether a chord that begins there is meant.</summary>
    /// <param name="bar">The number of its written bar.</param>
    /// <param name="beat">Its beat in the bar, counted from 1.</param>
    public bool Holds(int bar, double beat) =>
        bar >= FromBar && bar <= ToBar && (Beat is not { } wished || Math.Abs(beat - wished) < Rounding);

    private static string Bar(int number) => string.Create(CultureInfo.InvariantCulture, $"bar {number}");
}
