using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Comparisons;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>A comparison as JSON (RFC 8259), described in docs/files.md under "Comparisons".</summary>
public static class ComparisonJson
{
    /// <summary>The version of the form; it grows when a member is taken away or means something else.</summary>
    public const int Format = 2;

    /// <summary>How it is laid out.</summary>
    internal static JsonWriterOptions Indented { get; } = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>UTF-8 without byte order mark, indented, lines ending in \n. No times stand in it: the same comparison gives the same bytes.</summary>
    public static byte[] Write(Comparison comparison)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Indented))
        {
            Write(json, comparison);
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
    }

    /// <summary>The comparison as one object.</summary>
    internal static void Write(Utf8JsonWriter json, Comparison comparison)
    {
        json.WriteStartObject();
        json.WriteNumber("format", Format);
        json.WriteString("title", comparison.Title);
        json.WriteBoolean("hasOneFade", comparison.HasOneFade);
        json.WriteNumbers("unheard", comparison.Unheard);
        json.WriteStartArray("settings");
        foreach (var (index, setting) in comparison.Settings.Index())
        {
            Setting(json, setting, [.. Measure.All.Where(m => comparison.Best(m).Contains(index)).Select(m => m.Name)]);
        }

        json.WriteEndArray();
        json.WriteLines("advice", comparison.Advice, (line, advice) => Advice(line, comparison, advice));
        json.WriteEndObject();
    }

    private static void Setting(Utf8JsonWriter json, ComparedSetting compared, Items<string> best)
    {
        var setting = compared.Setting;
        json.WriteStartObject();
        json.WriteString("tower", setting.Tower);
        json.WriteString("sound", setting.Sound);
        json.WriteString("layout", setting.Layout);
        json.WriteString("layoutTaken", compared.LayoutTaken is { } taken ? TuneLayoutNames.Of(taken) : null);
        json.WriteNumber("semitones", setting.Semitones);
        json.WriteString("writtenKey", setting.Key?.ToString());
        json.WriteString("soundingKey", compared.Made?.Arrangement.SoundingKey?.ToString());
        json.WritePropertyName("fit");
        json.WriteOnOneLine(line => Fit(line, compared.Fit));
        Strings(json, "obstacles", compared.Obstacles);
        json.WritePropertyName("figures");
        Figures(json, compared.Figures);
        Strings(json, "best", best);
        json.WritePropertyName("plainHand");
        Figures(json, compared.PlainHand);
        Number(json, "plainHandBreaches", compared.PlainHand is null ? null : compared.PlainHandBreaches);
        json.WriteEndObject();
    }

    private static void Fit(Utf8JsonWriter line, KeyFit fit)
    {
        Number(line, "tuneOctaves", fit.Tune);
        line.WriteNumber("basses", fit.Basses);
        line.WriteNumber("withPedal", fit.WithPedal);
        line.WriteNumber("missingMet", fit.MissingMet);
    }

    /// <summary>The figures of a draft as an object; null where there are none.</summary>
    internal static void Figures(Utf8JsonWriter json, SettingFigures? figures)
    {
        if (figures is null)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartObject();
        json.WriteNumber("price", figures.Price);
        json.WriteNumber("chords", figures.Chords);
        json.WriteNumber("clashDose", figures.ClashDose);
        json.WriteNumber("tuneDose", figures.TuneDose);
        json.WriteNumber("medianClash", figures.MedianClash);
        json.WritePropertyName("worst");
        json.WriteOnOneLine(line => Worst(line, figures.Worst));
        json.WriteNumber("carry", figures.Carry.Value);
        json.WriteNumber("carryAtEqualTouch", figures.CarryAtEqualTouch.Value);
        json.WriteNumber("brightness", figures.Brightness.Value);
        Number(json, "effort", figures.Effort);
        json.WriteNumber("rolls", figures.Rolls);
        json.WriteNumber("inversions", figures.Inversions);
        json.WriteNumber("tenthsAndWider", figures.TenthsAndWider);
        json.WritePropertyName("strongBeats");
        if (figures.StrongBeats is { } beats)
        {
            json.WriteOnOneLine(line => JsonReasons.Write(line, beats));
        }
        else
        {
            json.WriteNullValue();
        }

        json.WriteNumber("strokes", figures.Strokes);
        json.WriteNumber("silentChords", figures.SilentChords);
        json.WriteNumber("singleStrokes", figures.SingleStrokes);
        Number(json, "bound", figures.Status?.Bound);
        json.WriteEndObject();
    }

    private static void Worst(Utf8JsonWriter line, Choice worst)
    {
        line.WriteNumber("bar", worst.Bar);
        line.WriteNumber("pass", worst.Pass);
        line.WriteNumber("beat", worst.Beat);
        line.WriteString("symbol", worst.Symbol);
        line.WriteString("figure", worst.Figure);
        line.WriteNumber("clash", worst.Clash.Avoidable);
    }

    private static void Advice(Utf8JsonWriter line, Comparison comparison, KeyAdvice advice)
    {
        line.WriteNumber("setting", comparison.Settings.Index().First(s => ReferenceEquals(s.Item, advice.Chosen)).Index);
        line.WriteString("reason", advice.Reason);
    }

    /// <summary>A list of texts.</summary>
    internal static void Strings(Utf8JsonWriter json, string name, Items<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    /// <summary>A number, or null.</summary>
    internal static void Number(Utf8JsonWriter json, string name, double? number)
    {
        if (number is { } value)
        {
            json.WriteNumber(name, value);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
