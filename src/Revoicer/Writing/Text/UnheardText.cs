using System.Globalization;
using Revoicer.LeadSheets;

namespace Revoicer.Writing.Text;

/// <summary>Says which written bars of a sheet are never heard.</summary>
public static class UnheardText
{
    private const int MostNamed = 8;

    /// <summary>"bars 5 to 7 are never heard: ..."; null where every bar is heard.</summary>
    public static string? Of(LeadSheet sheet)
    {
        var runs = Runs(sheet.Unheard.ToArray());
        if (runs.Count == 0)
        {
            return null;
        }

        string[] named = [.. runs.Take(MostNamed).Select(Name)];
        var more = runs.Count > MostNamed ? [Sentences.Count(sheet.Unheard.Count - runs.Take(MostNamed).Sum(r => r.To + 1 - r.From), "more bar", "more bars")] : Array.Empty<string>();
        var verb = sheet.Unheard.Count == 1 ? "is" : "are";
        return $"{Sentences.List([.. named, .. more])} {verb} never heard: the repeats, endings and jumps as written leave {(sheet.Unheard.Count == 1 ? "it" : "them")} out";
    }

    private static List<(int From, int To)> Runs(int[] numbers)
    {
        var runs = new List<(int From, int To)>();
        foreach (var number in numbers)
        {
            if (runs.Count > 0 && runs[^1].To + 1 == number)
            {
                runs[^1] = (runs[^1].From, number);
            }
            else
            {
                runs.Add((number, number));
            }
        }

        return runs;
    }

    private static string Name((int From, int To) run) => run switch
    {
        (0, 0) => "the pickup",
        (0, var to) => string.Create(CultureInfo.InvariantCulture, $"the pickup to bar {to}"),
        var (from, to) when from == to => string.Create(CultureInfo.InvariantCulture, $"bar {from}"),
        var (from, to) => string.Create(CultureInfo.InvariantCulture, $"bars {from} to {to}"),
    };
}
