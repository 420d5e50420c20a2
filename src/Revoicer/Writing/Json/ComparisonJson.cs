using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Comparisons;
using Revoicer.Playing;

namespace Revoicer.Writing.Json;

/// <summary>A comparison as JSON (RFC 8259), described in docs/files.md under "Comparisons".</summary>
public static class ComparisonJson
{
    /// <summary>The version of the form; it grows when a member is taken away or means something else.</summary>
    public const int Format = 2;

    /// <summary>UTF-8 without byte order mark, indented, lines ending in \n. No times stand in it: the same comparison gives the same bytes.</summary>
    public static byte[] Write(Comparison comparison) => JsonForm.File(comparison, Members);

    /// <summary>The members of a comparison.</summary>
    internal static void Members(Utf8JsonWriter json, Comparison comparison)
    {
        json.WriteNumber("format", Format);
        json.WriteString("title", comparison.Title);
        json.WriteBoolean("hasOneFade", comparison.HasOneFade);
        json.WriteNumbers("unheard", comparison.Unheard);
        json.WriteObjects("settings", comparison.Settings.Index(), (_, setting) => Setting(
            json,
            setting.Item,
            Measure.All.Where(m => comparison.Best(m).Contains(setting.Index)).Select(m => m.Name)));
        json.WriteLines("advice", comparison.Advice, (line, advice) => Advice(line, comparison, advice));
    }

    private static void Setting(Utf8JsonWriter json, ComparedSetting compared, IEnumerable<string> best)
    {
        var setting = compared.Setting;
        json.WriteString("tower", setting.Tower);
        json.WriteString("sound", setting.Sound);
        json.WriteString("layout", setting.Layout);
        json.WriteString("layoutTaken", compared.LayoutTaken is { } taken ? TuneLayoutNames.Of(taken) : null);
        json.WriteNumber("semitones", setting.Semitones);
        json.WriteString("writtenKey", setting.Key?.ToString());
        json.WriteString("soundingKey", compared.Made?.Arrangement.SoundingKey?.ToString());
        json.WriteLine("fit", compared.Fit, Fit);
        json.WriteTexts("obstacles", compared.Obstacles);
        json.WriteObject("figures", compared.Figures, Figures);
        json.WriteTexts("best", best);
        json.WriteObject("plainHand", compared.PlainHand, Figures);
        json.WriteNumber("plainHandBreaches", compared.PlainHand is null ? null : compared.PlainHandBreaches);
    }

    private static void Fit(Utf8JsonWriter json, KeyFit fit)
    {
        json.WriteNumber("tuneOctaves", fit.Tune);
        json.WriteNumber("basses", fit.Basses);
        json.WriteNumber("withPedal", fit.WithPedal);
        json.WriteNumber("missingMet", fit.MissingMet);
    }

    /// <summary>The members of the figures of a draft.</summary>
    internal static void Figures(Utf8JsonWriter json, SettingFigures figures)
    {
        json.WriteNumber("price", figures.Price);
        json.WriteNumber("chords", figures.Chords);
        json.WriteNumber("clashDose", figures.ClashDose);
        json.WriteNumber("tuneDose", figures.TuneDose);
        json.WriteNumber("medianClash", figures.MedianClash);
        json.WriteLine("worst", figures.Worst, Worst);
        json.WriteNumber("carry", figures.Carry.Value);
        json.WriteNumber("carryAtEqualTouch", figures.CarryAtEqualTouch.Value);
        json.WriteNumber("brightness", figures.Brightness.Value);
        json.WriteNumber("effort", figures.Effort);
        json.WriteNumber("rolls", figures.Rolls);
        json.WriteNumber("inversions", figures.Inversions);
        json.WriteNumber("tenthsAndWider", figures.TenthsAndWider);
        json.WriteLine("strongBeats", figures.StrongBeats, JsonTotals.Write);
        json.WriteNumber("strokes", figures.Strokes);
        json.WriteNumber("silentChords", figures.SilentChords);
        json.WriteNumber("singleStrokes", figures.SingleStrokes);
        json.WriteNumber("bound", figures.Status?.Bound);
    }

    private static void Worst(Utf8JsonWriter json, Choice worst)
    {
        json.WriteNumber("bar", worst.Bar);
        json.WriteNumber("pass", worst.Pass);
        json.WriteNumber("beat", worst.Beat);
        json.WriteString("symbol", worst.Symbol);
        json.WriteString("figure", worst.Figure);
        json.WriteNumber("clash", worst.Clash.Avoidable);
    }

    private static void Advice(Utf8JsonWriter json, Comparison comparison, KeyAdvice advice)
    {
        json.WriteNumber("setting", comparison.Settings.Index().First(s => ReferenceEquals(s.Item, advice.Chosen)).Index);
        json.WriteString("reason", advice.Reason);
    }
}
