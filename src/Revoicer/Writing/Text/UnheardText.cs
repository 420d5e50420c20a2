using System.Globalization;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>Says which written bars of a sheet are never heard.</summary>
public static class UnheardText
{
    private const int MostNamed = 8;

    /// <summary>"bars 5 to 7 are never heard: ..."; null where every bar is heard.</summary>
    /// <param name="unheard">Their numbers, each once, in the order of the sheet.</param>
    public static string? Of(Items<int> unheard)
    {
        var runs = Runs(unheard);
        if (runs.Count == 0)
        {
            return null;
        }

        string[] named = [.. runs.Take(MostNamed).Select(Name)];
        var more = runs.Count > MostNamed ? [Sentences.Count(unheard.Count - runs.Take(MostNamed).Sum(r => r.To + 1 - r.From), "more bar", "more bars")] : Array.Empty<string>();
        var verb = unheard.Count == 1 ? "is" : "are";
        return $"{Sentences.List([.. named, .. more])} {verb} never heard: the repeats, endings and jumps as written leave {(unheard.Count == 1 ? "it" : "them")} out";
    }

    private static List<(int From, int To)> Runs(Items<int> numbers)
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
