using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Comparisons;
using Revoicer.Playing;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>A comparison as a table in plain text, one setting a line, what needs saying under it.</summary>
public static class ComparisonText
{
    /// <summary>The text: lines as long as the table needs, each ending in \n. Only the times differ from run to run.</summary>
    public static string Of(Comparison comparison)
    {
        var rows = Rows(comparison);
        return Head(comparison) + "\n" + PlainTable.Of(Columns(comparison, rows)) + "\n" + Foot(comparison);
    }

    // The drafts, and under them the plain hand once for each tower, key and layout.
    private static ComparisonRow[] Rows(Comparison comparison) =>
    [
        .. comparison.Settings.Select(s => new ComparisonRow(s, s.Figures, IsPlain: false)),
        .. comparison.Settings.Where(s => s.PlainHand is not null)
            .DistinctBy(s => s.Setting with { Sound = "" })
            .Select(s => new ComparisonRow(s, s.PlainHand, IsPlain: true)),
    ];

    /// <summary>Title, tower and key: a line each.</summary>
    internal static string Head(Comparison comparison)
    {
        var first = comparison.Settings[0];
        var title = comparison.Title.Trim().Length == 0 ? "Without a title" : comparison.Title;
        var made = comparison.Settings.Select(s => s.Made).OfType<Drafting.Made>().FirstOrDefault();
        var chords = made is null ? "" : $": {Sentences.Count(made.Arrangement.Choices.Count, "chord", "chords")} as heard";
        var tower = Varies(comparison, s => s.Tower) ? "" : $"tower: {first.Setting.Tower}\n";
        return VisibleText.OneLine(title + chords) + "\n" + VisibleText.OneLine(tower.TrimEnd()) + (tower.Length > 0 ? "\n" : "") + Key(comparison, made);
    }

    private static string Key(Comparison comparison, Drafting.Made? made) =>
        comparison.HasKeys && made is not null ? $"what you read is heard {Sentences.Higher(made.Arrangement.Tower.Transposition)}\n"
            : made?.Arrangement is not { WrittenKey: { } written, SoundingKey: { } sounding } draft
                ? ""
                : $"key: you read {written}; it is heard {Sentences.Higher(draft.Tower.Transposition)}, in {sounding}\n";

    private static bool Varies(Comparison comparison, Func<Setting, object?> what) => comparison.Settings.Select(s => what(s.Setting)).Distinct().Count() > 1;

    private static List<PlainTable.Column> Columns(Comparison comparison, ComparisonRow[] rows)
    {
        var columns = new List<PlainTable.Column>();
        if (Varies(comparison, s => s.Tower))
        {
            Add(["tower"], r => r.Setting.Tower);
        }

        Add(["sound"], r => r.IsPlain ? "plain hand" : r.Setting.Sound);
        if (Varies(comparison, s => s.Layout) || rows[0].Setting.Layout is not (null or "above"))
        {
            Add(["tune"], r => Layout(r.Compared));
        }

        if (comparison.HasKeys)
        {
            AddKeys(comparison, columns, rows);
        }

        foreach (var measure in Measure.All)
        {
            var best = comparison.Best(measure);
            columns.Add(new([.. MeasureWords.Heading(measure)], true, [.. rows.Select((r, i) => Number(r, measure, best.Contains(i)))]));
            if (measure.Name == Measure.Worst)
            {
                Add(["", "chord"], r => r.Figures is { } figures ? Place(figures.Worst) : "");
            }
        }

        Add(["search"], r => Status(comparison, r));
        columns.Add(new(["time"], true, [.. rows.Select(r => r.IsPlain ? "" : string.Create(CultureInfo.InvariantCulture, $"{r.Compared.Took.Value:0.0} s"))]));
        return columns;

        void Add(string[] heading, Func<ComparisonRow, string> cell) =>
            columns.Add(new([.. heading], false, [.. rows.Select(r => VisibleText.OneLine(cell(r)))]));
    }

    // "above"; where the cheaper of the two was asked for, which one it is: "best (above)".
    private static string Layout(ComparedSetting compared) => compared switch
    {
        { Setting.Layout: "best", LayoutTaken: { } taken } => $"best ({TuneLayoutNames.Of(taken)})",
        _ => compared.Setting.Layout ?? "",
    };

    private static void AddKeys(Comparison comparison, List<PlainTable.Column> columns, ComparisonRow[] rows)
    {
        columns.Add(new(["key"], false, [.. rows.Select(r => r.Setting.KeyName)]));
        if (rows.Any(r => r.Compared.Fit.Tune is not null))
        {
            columns.Add(new(["tune", "fits"], false, [.. rows.Select(r => r.Compared.Fit.TuneFits ? "yes" : "no")]));
        }

        columns.Add(new(["basses", "fit"], true, [.. rows.Select(r => $"{r.Compared.Fit.WithPedal}/{r.Compared.Fit.Basses}")]));
        columns.Add(new(["missing", "met"], true, [.. rows.Select(r => $"{r.Compared.Fit.MissingMet}")]));
        var chosen = comparison.Advice.Select(a => a.Chosen).ToHashSet(ReferenceEqualityComparer.Instance);
        columns.Add(new(["", "price"], true, [.. rows.Select(r => r.Figures is { } figures && !r.IsPlain
            ? Sentences.Price(figures.Price) + (chosen.Contains(r.Compared) ? "<" : " ")
            : "- ")]));
    }

    // The mark has a place of its own, so that numbers stay in line.
    private static string Number(ComparisonRow row, Measure measure, bool isBest)
    {
        var value = row.Figures is { } figures ? measure.Shown(figures) : null;
        var text = value is { } number ? number.ToString(measure.Decimals == 0 ? "0" : "0.0", CultureInfo.InvariantCulture) + MeasureWords.Unit(measure) : "-";
        var beats = measure.Name == Measure.StrongBeats && row.Figures?.StrongBeats is { } strong ? $" of {strong.LongEnough} ({strong.All})" : "";
        return text + beats + (isBest && !row.IsPlain ? "*" : " ");
    }

    private static string Place(Choice worst) =>
        string.Create(CultureInfo.InvariantCulture, $"{(worst.Bar == 0 ? "pickup" : $"bar {worst.Bar}")} beat {worst.Beat:0.##}, {worst.Symbol}, {worst.Figure}");

    private static string Status(Comparison comparison, ComparisonRow row) => row switch
    {
        { IsPlain: true, Compared.PlainHandBreaches: 0 } => "playable",
        { IsPlain: true, Compared.PlainHandBreaches: var breaches } => $"limits broken {(breaches == 1 ? "once" : $"{breaches} times")}",
        { Figures.Status: { } status } => ShortStatus(status),
        _ => $"no draft ({NumberOf(comparison, row.Compared)})",
    };

    /// <summary>"proven", "within 0.3 %".</summary>
    internal static string ShortStatus(SearchStatus status)
    {
        var text = status.ToString();
        return status.Bound is { } bound && status.Price <= bound ? "proven" : text.Replace(" of the best possible", "", StringComparison.Ordinal);
    }

    private static int NumberOf(Comparison comparison, ComparedSetting setting) => Array.IndexOf(Obstacles(comparison), WhyNot(setting)) + 1;

    // What stands in the way of several is told once.
    private static string[] Obstacles(Comparison comparison) => [.. comparison.Settings.Where(s => s.Figures is null).Select(WhyNot).Distinct()];

    private static string WhyNot(ComparedSetting setting) => string.Join("; ", setting.Obstacles);

    private static string Foot(Comparison comparison)
    {
        var lines = new List<string>();
        if (Measure.All.Any(m => comparison.Best(m).Count > 0))
        {
            lines.Add("* the best in its column, of equals each; columns without a mark are alike or a matter of taste");
        }

        lines.Add("strong beats with a bass: of the new chords on strong beats that last 0.8 s or more; in brackets how many there are, quick ones included");
        lines.AddRange(WithTune(comparison));
        lines.AddRange(comparison.HasOneFade ? [] : ["the sounds have different fades, so their clash doses cannot be compared"]);
        lines.AddRange(comparison.Settings.Any(s => s.PlainHand is not null)
            ? ["plain hand: the root in the lowest octave of the pedals, third and fifth nearest to middle C, all together; nobody asked whether it can be played"]
            : []);
        lines.AddRange(UnheardText.Of(comparison.Unheard) is { } unheard ? [unheard] : []);
        lines.AddRange(Obstacles(comparison).Select((why, i) => $"({i + 1}) {why}"));
        lines.AddRange(comparison.Advice.Select(a => $"< {Whose(comparison, a.Chosen.Setting)}{a.Reason}"));
        lines.AddRange(comparison.Advice.Count > 0 ? ["nothing is moved unless you say so: draft with --key, or --key best"] : []);
        return string.Concat(lines.Select(line => VisibleText.OneLine(line) + "\n"));
    }

    // The figures of clash leave out what the tune clashes with itself; here is what they are with it.
    private static IEnumerable<string> WithTune(Comparison comparison)
    {
        var made = comparison.Settings.Where(s => s.Made?.Arrangement.TuneOctaves is not null).ToArray();
        if (made.Length > 0)
        {
            var with = made.Select(s => $"{SettingNames.Of(comparison, s)} median {Sentences.Figure(s.Made!.Arrangement.MedianWithTune)}, worst {Sentences.Figure(s.Figures!.Worst.Clash.Whole)}");
            yield return $"clash leaves out the tune's own; with it: {string.Join("; ", with)}";
        }
    }

    // For which of several towers, sounds and layouts a key is recommended.
    private static string Whose(Comparison comparison, Setting setting)
    {
        string?[] names =
        [
            comparison.Settings.Any(s => s.Setting.Sound != setting.Sound) ? setting.Sound : null,
            comparison.Settings.Any(s => s.Setting.Tower != setting.Tower) ? setting.Tower : null,
            comparison.Settings.Any(s => s.Setting.Layout != setting.Layout) ? $"the tune {setting.Layout}" : null,
        ];
        string[] told = [.. names.OfType<string>()];
        return told.Length == 0 ? "" : string.Join(", ", told) + ": ";
    }
}
