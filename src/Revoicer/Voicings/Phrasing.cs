using Revoicer.LeadSheets;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Which phrase each written bar belongs to: phrases end where a section ends (double bar, repeat) and in bars with a fermata, else every four full
/// bars; a single bar left over at the end of a section joins the phrase before it. Where a player says in which bars phrases
/// begin, they begin there and nowhere else.
/// </summary>
internal sealed class Phrasing
{
    private const int FullBars = 4;

    private readonly int[] _phraseOfBar;

    private Phrasing(int[] phraseOfBar) => _phraseOfBar = phraseOfBar;

    public int Count => _phraseOfBar[^1] + 1;

    public static Phrasing Of(LeadSheet sheet, Items<int> asked) => asked.Count == 0 ? Of(sheet) : Asked(sheet, [.. asked]);

    // Of a bar in two parts, which share a number, the first begins the phrase.
    private static Phrasing Asked(LeadSheet sheet, HashSet<int> asked)
    {
        var phrase = 0;
        return new Phrasing([.. sheet.Bars.Select((bar, index) =>
        {
            var begins = index > 0 && asked.Contains(bar.Number) && sheet.Bars[index - 1].Number != bar.Number;
            return begins ? ++phrase : phrase;
        })]);
    }

    private static Phrasing Of(LeadSheet sheet)
    {
        var phraseOfBar = new int[sheet.Bars.Count];
        var phrase = 0;
        for (var start = 0; start < phraseOfBar.Length;)
        {
            var end = start;
            while (!sheet.Bars[end].EndsSection && sheet.Bars[end].Fermatas.Count == 0 && end + 1 < phraseOfBar.Length)
            {
                end++;
            }

            phrase = Number(sheet, start, end, phrase, phraseOfBar);
            start = end + 1;
        }

        return new Phrasing(phraseOfBar);
    }

    public int Of(int writtenBar) => _phraseOfBar[writtenBar];

    // Numbers the bars of one section and returns the next free phrase.
    private static int Number(LeadSheet sheet, int start, int end, int phrase, int[] phraseOfBar)
    {
        var full = 0;
        for (var bar = start; bar <= end; bar++)
        {
            var leftOver = end - bar;
            if (full > 0 && full % FullBars == 0 && leftOver > 0 && sheet.Bars[bar].Length == sheet.Bars[bar].Meter.Bar)
            {
                phrase++;
            }

            phraseOfBar[bar] = phrase;
            full += sheet.Bars[bar].Length == sheet.Bars[bar].Meter.Bar ? 1 : 0;
        }

        return phrase + 1;
    }
}
