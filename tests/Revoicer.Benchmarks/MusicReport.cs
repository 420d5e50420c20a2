using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Text;
using Revoicer.Writing.Json;

namespace Revoicer.Benchmarks;

/// <summary>Prints the figures of arrangement files as ../shared/tools/music.py prints them, so that the two can be laid beside each other.</summary>
internal static class MusicReport
{
    private const int LongestName = 34;

    /// <summary>A line for each file; then the medians, and two sums over all.</summary>
    public static int Print(IReadOnlyList<string> files)
    {
        var rows = new List<Dictionary<string, object?>>();
        var code = 0;
        foreach (var file in files)
        {
            switch (ArrangementJson.Read(file, File.ReadAllBytes(file)))
            {
                case Reading<Arrangement>.Accepted { Value: var made }:
                    var figures = MusicFigures.Of(made);
                    var name = Path.GetFileName(file);
                    Console.WriteLine($"{name[..Math.Min(name.Length, LongestName)].PadRight(LongestName)} {string.Join(' ', figures.Select(f => $"{f.Name} {Text(f.Value)}"))}");
                    rows.Add(figures.ToDictionary(f => f.Name, f => f.Value));
                    break;
                case Reading<Arrangement>.Refused refused:
                    Console.Error.Write(string.Concat(refused.Problems));
                    code = 1;
                    break;
            }
        }

        if (rows.Count > 0)
        {
            Sum(rows);
        }

        return code;
    }

    private static void Sum(List<Dictionary<string, object?>> rows)
    {
        var medians = rows[0].Keys.Select(k => (Name: k, Values: Values(k))).Where(m => m.Values.Length > 0).Select(m => $"{m.Name} {Rounded(Median(m.Values), 2)}");
        Console.WriteLine($"{rows.Count} pieces; medians: {string.Join(' ', medians)}");
        var quiet = Rounded(Values("quiet").Average(), 3);
        Console.WriteLine($"{OverAll("struck", "change")}; {OverAll("step", "steps")}; quiet, mean: {quiet}");

        double[] Values(string name) => [.. rows.Select(r => r[name]).OfType<object>().Select(v => Convert.ToDouble(v, CultureInfo.InvariantCulture))];

        string OverAll(string name, string count)
        {
            var all = Values(count).Sum();
            var hits = rows.Sum(r => Convert.ToDouble(r[name] ?? 0.0, CultureInfo.InvariantCulture) * Convert.ToDouble(r[count], CultureInfo.InvariantCulture));
            return string.Create(CultureInfo.InvariantCulture, $"{name} over all: {Rounded(hits / Math.Max(1, all), 2)} of {all}");
        }
    }

    private static double Median(double[] values)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
    }

    private static string Text(object? value) => value switch
    {
        null => "None",
        double number => Rounded(number, 2),
        _ => string.Create(CultureInfo.InvariantCulture, $"{value}"),
    };

    // What lies half-way in binary as well goes to the even digit, as the other program rounds.
    private static string Rounded(double value, int decimals)
    {
        var halves = value * (2 << decimals);
        var exact = halves == Math.Floor(halves) ? Math.Round(value, decimals, MidpointRounding.ToEven) : value;
        return exact.ToString($"F{decimals}", CultureInfo.InvariantCulture);
    }
}
