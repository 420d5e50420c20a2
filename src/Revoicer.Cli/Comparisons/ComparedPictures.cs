using System.Globalization;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Streams;
using Revoicer.Comparisons;
using Revoicer.Pictures;

namespace Revoicer.Cli.Comparisons;

/// <summary>The pictures of a compare command, as files to be written.</summary>
internal static class ComparedPictures
{
    /// <summary>The pictures of a trade-off.</summary>
    public static IEnumerable<ComparedPicture> Of(TradeOff tradeOff)
    {
        if (TradeOffChart.Of(tradeOff) is { } chart)
        {
            yield return new("-trade-off", ComparisonPictures.TradeOff(chart), null);
        }
    }

    /// <summary>The pictures of a comparison.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="towerOf">The tower of each of its settings.</param>
    /// <param name="bar">The bar of which the chords are drawn; null for none.</param>
    public static IEnumerable<ComparedPicture> Of(Comparison comparison, Func<ComparedSetting, Tower> towerOf, int? bar)
    {
        var which = comparison.HasKeys ? "of several keys those recommended, then the written one" : "those asked for first";
        if (ClashOverBars.Of(comparison) is { } clash)
        {
            yield return new("-clash", ComparisonPictures.Clash(clash), Aside(clash.Lines.Count, clash.LeftOut, "drafts", which));
        }

        if (KeyChart.Of(comparison) is { } keys)
        {
            yield return new("-keys", ComparisonPictures.Keys(keys), Aside(keys.Panels.Count, keys.LeftOut, "settings", "those asked for first"));
        }

        foreach (var (beat, strips) in bar is { } number ? ChordStrips.InBar(comparison, towerOf, number) : [])
        {
            yield return new(
                string.Create(CultureInfo.InvariantCulture, $"-bar-{bar}-beat-{beat:0.##}"),
                ComparisonPictures.Chord(strips),
                Aside(strips.Strips.Count, strips.LeftOut, "drafts", which));
        }
    }

    private static string? Aside(int drawn, int leftOut, string what, string which) => leftOut == 0
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"{drawn} of {drawn + leftOut} {what} {(drawn == 1 ? "is" : "are")} drawn: {which}; name fewer to see others");

    /// <summary>An SVG and a PNG of each; null, with a sentence told, where the machine has no font to letter them with.</summary>
    /// <param name="pictures">The pictures.</param>
    /// <param name="name">The name of the run.</param>
    /// <param name="error">Where the sentence goes.</param>
    public static IReadOnlyList<OutputFile>? Files(IEnumerable<ComparedPicture> pictures, string name, TextWriter error)
    {
        var files = new List<OutputFile>();
        foreach (var picture in pictures)
        {
            switch (picture.Drawing)
            {
                case Drawing.Made { Picture: var drawn }:
                    files.Add(new OutputFile($"{name}{picture.Ending}.svg", drawn.Svg.AsSpan().ToArray()));
                    files.Add(new OutputFile($"{name}{picture.Ending}.png", drawn.Png.AsSpan().ToArray()));
                    break;
                case Drawing.NoFont { Reason: var reason }:
                    error.Say($"revoicer: {reason}");
                    return null;
                default:
                    throw new InvalidOperationException($"no such drawing: {picture.Drawing}");
            }
        }

        return files;
    }
}
