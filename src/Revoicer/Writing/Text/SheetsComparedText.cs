using System.Globalization;
using Revoicer.Comparisons;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>Several sheets under the same settings: one sheet a line, and which setting is ahead how often.</summary>
public static class SheetsComparedText
{
    // What a program for an evening is chosen by.
    private static readonly string[] Shown = [Measure.ClashDose, "carry", "effort"];

    /// <summary>
    /// The text: lines as long as the table needs, each ending in \n. Of several keys the recommended one stands for a
    /// setting.
    /// </summary>
    /// <param name="sheets">The sheets, compared under the same towers, sounds, layouts and keys; at least one.</param>
    public static string Of(Items<SheetComparison> sheets)
    {
        Row[] rows = [.. sheets.Select(Row.Of)];
        var groups = rows.Max(r => r.Settings.Count);
        var hasKeys = sheets.Any(s => s.Comparison is { HasKeys: true });
        var columns = new List<PlainTable.Column>
        {
            new(["sheet"], false, [.. rows.Select(r => VisibleText.OneLine(r.Name))]),
            new(["chords"], true, [.. rows.Select(r => r.Settings.Select(s => s?.Figures?.Chords).FirstOrDefault(c => c is not null)?.ToString(CultureInfo.InvariantCulture) ?? "-")]),
        };
        var names = Enumerable.Range(0, groups).Select(g => NameOf(sheets, rows, g)).ToArray();
        for (var group = 0; group < groups; group++)
        {
            columns.AddRange(Columns(rows, group, names[group], hasKeys));
        }

        columns.Add(new(["search"], false, [.. rows.Select(Status)]));
        return PlainTable.Of(columns) + "\n" + Foot(rows, names) + string.Concat(Unheard(sheets));
    }

    private static IEnumerable<PlainTable.Column> Columns(Row[] rows, int group, string name, bool hasKeys)
    {
        if (hasKeys)
        {
            yield return new([name, "key"], false, [.. rows.Select(r => r.At(group) is { Figures: not null } setting ? setting.Setting.KeyName : "-")]);
        }

        foreach (var measure in Shown.Select(Named))
        {
            var heading = measure.Name == Measure.ClashDose ? "clash dose " : $"{measure.Name} ";
            yield return new(
                [measure.Name == Measure.ClashDose && !hasKeys ? name + " " : "", heading],
                true,
                [.. rows.Select(r => Number(r, group, measure))]);
        }
    }

    private static Measure Named(string name) => Measure.All.First(m => m.Name == name);

    private static string Number(Row row, int group, Measure measure)
    {
        var value = row.At(group)?.Figures is { } figures ? measure.Shown(figures) : null;
        var text = value is { } number ? number.ToString("0.0", CultureInfo.InvariantCulture) + MeasureWords.Unit(measure) : "-";
        return text + (row.Best(measure).Contains(group) ? "*" : " ");
    }

    // "bright" where that says enough, else with tower and layout.
    private static string NameOf(Items<SheetComparison> sheets, Row[] rows, int group)
    {
        var setting = rows.Select(r => r.At(group)).OfType<ComparedSetting>().First();
        var comparison = sheets.Select(s => s.Comparison).OfType<Comparison>().First(c => c.Settings.Contains(setting));
        return VisibleText.OneLine(SettingNames.WithoutKey(comparison, setting));
    }

    private static string Status(Row row) => row.Settings.Count == 0 ? "cannot be read, or not as asked for"
        : row.Settings.All(s => s?.Figures is null) ? string.Join(", or ", row.Settings.Select(s => s!.Drafting.InShort).Distinct())
        : row.Settings.Any(s => s?.Figures is null) ? string.Join(", ", row.Settings.Where(s => s!.Figures is null).Select(s => $"one {s!.Drafting.InShort}").Distinct())
        : row.Settings.All(s => s!.Figures!.Status is { } status && status.Bound is { } bound && status.Price <= bound) ? "proven"
        : "not all proven";

    private static string Foot(Row[] rows, string[] names)
    {
        // Of one setting there is nothing to say: it has none beside it.
        if (names.Length < 2)
        {
            return "";
        }

        var compared = rows.Count(r => r.Settings.Any(s => s?.Figures is not null));
        var lines = new List<string> { "* the best of its sheet, of equals each" };
        lines.AddRange(names.Select((name, group) =>
            $"{name}: least clash on {Count(group, Measure.ClashDose)}, most carry on {Count(group, "carry")}, least effort on {Count(group, "effort")} of {Sentences.Count(compared, "sheet", "sheets")}"));
        return string.Concat(lines.Select(line => line + "\n"));

        int Count(int group, string measure) => rows.Count(r => r.Best(Named(measure)).Contains(group));
    }

    private static IEnumerable<string> Unheard(Items<SheetComparison> sheets) => sheets
        .Select(s => (s.Name, Bars: UnheardText.Of(s.Comparison?.Unheard ?? [])))
        .Where(s => s.Bars is not null)
        .Select(s => VisibleText.OneLine($"{s.Name}: {s.Bars}") + "\n");

    /// <summary>A sheet with one draft for every tower, sound and layout.</summary>
    private sealed record Row(string Name, Items<ComparedSetting?> Settings, bool HasOneFade)
    {
        public ComparedSetting? At(int group) => group < Settings.Count ? Settings[group] : null;

        public Items<int> Best(Measure measure) =>
            measure.Name == Measure.ClashDose && !HasOneFade ? [] : measure.Best([.. Settings.Select(s => s?.Figures)]);

        public static Row Of(SheetComparison sheet) => new(
            sheet.Name,
            sheet.Comparison is { } comparison
                ? comparison.Settings
                    .GroupBy(s => (s.Setting.Tower, s.Setting.Sound, s.Setting.Layout))
                    .Select(group => group.FirstOrDefault(s => comparison.Advice.Any(a => ReferenceEquals(a.Chosen, s))) ?? group.First())
                    .ToItems<ComparedSetting?>()
                : [],
            sheet.Comparison is not { HasOneFade: false });
    }
}
