using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Values;

namespace Revoicer.Comparisons;

/// <summary>The key recommended among several, everything else alike.</summary>
/// <param name="Chosen">The draft in that key.</param>
/// <param name="Grounds">Why, in a clause.</param>
public sealed record KeyAdvice(ComparedSetting Chosen, string Grounds)
{
    // A difference of price that nobody below will hear. Estimate.
    private const int NearlyEqualPercent = 2;

    /// <summary>What is recommended, and why, in a sentence.</summary>
    public string Reason => $"{What(Chosen)}: {Grounds}";

    /// <summary>
    /// Recommends a key. Only keys with a draft count; of these only those with a pedal for the bass of every chord, or, where
    /// none has, for as many as can be; of these those whose price, what the tune costs with itself included, lies within 2 % of the lowest;
    /// of these the nearest to the written key, then the one with the fewest accidentals, then the cheaper.
    /// </summary>
    /// <param name="keys">The same sheet, tower, sound and layout in several keys.</param>
    /// <returns>Null where there is no draft in any of them.</returns>
    public static KeyAdvice? Of(IReadOnlyList<ComparedSetting> keys)
    {
        var made = keys.Where(k => k.Figures is not null).ToArray();
        if (made.Length == 0)
        {
            return null;
        }

        var most = made.Max(k => k.Fit.WithPedal);
        var fitting = made.Where(k => k.Fit.WithPedal == most).ToArray();
        var cheapest = fitting.MinBy(PriceOf)!;
        var chosen = fitting
            .Where(k => 100 * PriceOf(k) <= (100 + NearlyEqualPercent) * PriceOf(cheapest))
            .OrderBy(k => Math.Abs(k.Setting.Semitones))
            .ThenBy(k => Math.Abs(k.Setting.Key?.Fifths ?? 0))
            .ThenBy(PriceOf)
            .ThenByDescending(k => k.Setting.Semitones)
            .First();
        var written = keys.FirstOrDefault(k => k.Setting.Semitones == 0);
        return new KeyAdvice(chosen, Why(chosen, cheapest, written, Among(made.Length, fitting, keys.Any(k => k.Drafting is Drafting.Unmet))));
    }

    private static long PriceOf(ComparedSetting key) => key.Figures!.Price;

    private static string What(ComparedSetting chosen) => chosen.Setting switch
    {
        { Semitones: 0, Key: { } key } => $"stay in {key}",
        { Semitones: 0 } => "stay in the written key",
        { Key: { } key } setting => $"play it in {key} (--key {setting.Signed})",
        var setting => $"play it {Math.Abs(setting.Semitones)} semitones {(setting.Semitones > 0 ? "higher" : "lower")} (--key {setting.Signed})",
    };

    // Those whose prices were compared.
    private static string Among(int made, ComparedSetting[] fitting, bool hasUnmet)
    {
        var (keys, fit) = (fitting.Length == 1 ? "the one key" : $"the {fitting.Length} keys", fitting[0].Fit);
        return fitting.Length == made ? $"{keys} {(hasUnmet ? "in which all wishes can be met" : "that can be played")}"
            : fit.WithPedal == fit.Basses ? $"{keys} with a pedal for every bass"
            : $"{keys} with pedals for the most basses, {fit.WithPedal} of {fit.Basses}";
    }

    private static string Why(ComparedSetting chosen, ComparedSetting cheapest, ComparedSetting? written, string among)
    {
        var price = $"price {Price(chosen)}";
        var against = written switch
        {
            null => "",
            { Drafting: Drafting.Unmet } => "; as written a wish cannot be met",
            { Figures: null } => $"; as written it {written.Drafting.InShort}",
            _ when ReferenceEquals(written, chosen) => "",
            _ when written.Fit.WithPedal < chosen.Fit.WithPedal => $"; as written {written.Fit.Basses - written.Fit.WithPedal} of {written.Fit.Basses} basses have no pedal",
            _ => $", {Percent(PriceOf(written), PriceOf(chosen))} less than the {Price(written)} as written",
        };
        var isNearer = Math.Abs(chosen.Setting.Semitones) < Math.Abs(cheapest.Setting.Semitones);
        return PriceOf(chosen) == PriceOf(cheapest)
            ? $"{price}, the lowest of {among}{against}"
            : $"{price}{against}; {Name(cheapest)} is only {Percent(PriceOf(chosen), PriceOf(cheapest))} cheaper, and of prices within {NearlyEqualPercent} % "
                + (isNearer ? "the nearest key to the written one is taken" : "in keys equally near the written one that with fewer accidentals is taken");
    }

    private static string Name(ComparedSetting key) => key.Setting.Key is { } name ? name.ToString() : key.Setting.Signed;

    private static string Price(ComparedSetting key) => string.Create(CultureInfo.InvariantCulture, $"{PriceOf(key) / 1000.0:0.0}");

    // How much less the second is than the first.
    private static string Percent(long from, long to) => string.Create(CultureInfo.InvariantCulture, $"{100.0 * (from - to) / from:0.0} %");
}
