using System.Globalization;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>A tower in words. Keys are named as its file names them, middle C = C4, with sharps.</summary>
public static class TowerText
{
    /// <summary>The whole of it: lines of at most 100 characters ending in \n.</summary>
    public static string Of(Tower tower)
    {
        var page = new TextPage();
        page.Title(tower.Name, '=');
        page.Blank();
        page.Entry("Bells", Bells(tower) + ".");
        page.Entry("Pedals", Pedals(tower) + ".");
        page.Entry("Pitch", Pitch(tower) + ".");
        page.Entry("Measured", Measured(tower) + ".");
        page.Entry("Limits", tower.Limits.Count == 0 ? "of reach and time as shipped." : "of reach and time as shipped, but for these:");
        foreach (var own in tower.Limits)
        {
            page.Paragraph($"- {Limit(own)}", indent: 2, hanging: 2);
        }

        return page.ToString();
    }

    /// <summary>Compass, missing bells, pedals and transposition: one paragraph, all lines at an indent.</summary>
    /// <param name="tower">The tower.</param>
    /// <param name="about">What is said after that; may be empty.</param>
    /// <param name="indent">Blanks before every line.</param>
    public static string InShort(Tower tower, string about, int indent)
    {
        var page = new TextPage();
        page.Paragraph($"{tower.Name}: {Bells(tower)}. Pedals {Pedals(tower)}. {Sentences.Whole(Heard(tower.Transposition))} {about}", indent);
        return page.ToString();
    }

    private static string Bells(Tower tower)
    {
        WrittenNote[] missing = [.. tower.Missing];
        var without = missing.Length == 0 ? ", none missing" : $", without {Sentences.List([.. missing.Select(n => n.ToString())])}";
        return $"{Sentences.Count(tower.Bells.Count, "bell", "bells")} from {tower.Bells[0].Note} to {tower.Bells[^1].Note}{without}";
    }

    private static string Pedals(Tower tower)
    {
        var count = tower.Bells.Count(b => tower.HasPedal(b.Note));
        return $"from {tower.PedalsFrom} to {tower.PedalsTo}, {Sentences.Count(count, "of them has a bell", "of them with a bell")}";
    }

    private static string Pitch(Tower tower)
    {
        var lowest = tower.Bells[0];
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{Heard(tower.Transposition)}; the bell on {lowest.Note} strikes {lowest.StrikeNote}, {lowest.Strike.Value:0.0} Hz");
    }

    private static string Heard(Transposition transposition) => $"what you read is heard {Sentences.Higher(transposition)}";

    private static string Measured(Tower tower)
    {
        string[] measured = [.. tower.Bells.Where(b => b.IsMeasured).Select(b => b.Note.ToString())];
        return measured.Length switch
        {
            0 => "no bell, so all are taken to sound as the default bell",
            var n when n == tower.Bells.Count => "all bells",
            var n => $"{Sentences.Count(n, "bell", "bells")}, {Sentences.List(measured)}; the others are taken to sound as the default bell",
        };
    }

    private static string Limit(LimitOverride own)
    {
        var shipped = PlayingLimits.Shipped.Row(own.Key);
        var unit = LimitKeys.Ranges.Single(r => r.Key == own.Key).Unit;
        string[] halves = [.. new[] { Half("hard", own.Hard, shipped.Hard, unit), Half("soft", own.Soft, shipped.Soft, unit) }.OfType<string>()];
        return $"{own.Key}: {(halves.Length == 0 ? "nothing is set, so it stays as shipped" : string.Join("; ", halves))}";
    }

    private static string? Half(string name, double? own, double? shipped, string unit) => (own, shipped) switch
    {
        (null, _) => null,
        ({ } now, { } before) when now == before => string.Create(CultureInfo.InvariantCulture, $"{name} {now}{unit}, as shipped"),
        ({ } now, { } before) => string.Create(CultureInfo.InvariantCulture, $"{name} {now} in place of {before}{unit}"),
        ({ } now, null) => string.Create(CultureInfo.InvariantCulture, $"{name} {now}{unit}, where none ships and none is asked for"),
    };
}
