using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>
/// Finds the chords of a passage. Chord symbols of the file stand; before the first of them, and throughout where there is
/// none, chords are found from what sounds: <see cref="ChordPrices"/> says by what price, docs/chord-symbols.md in words.
/// </summary>
public static class HarmonyFinding
{
    /// <summary>The passage's bars with chords, as far as any were found.</summary>
    /// <param name="passage">The passage. Bars count as they are written, one after the other, whatever is repeated.</param>
    /// <param name="cancel">Stops the work.</param>
    public static FoundHarmony Of(Passage passage, CancellationToken cancel = default)
    {
        var bars = passage.Sheet.Bars;
        var (count, until) = Open(bars);
        var moments = Moments.Of(passage, count, until).ToArray();
        if (moments.Length == 0)
        {
            return new FoundHarmony(passage.Sheet, [], 0);
        }

        var chords = ByMoment(moments.Length, ChordSearch.Best(moments, cancel));
        var stretches = moments.Index()
            .GroupBy(m => m.Item.Bar)
            .ToDictionary(g => g.Key, g => Stretches([.. g.Select(m => (m.Item, chords[m.Index]))], g.Key + 1 == count ? until : bars[g.Key].Length));
        var unclear = stretches.SelectMany(inBar => inBar.Value
            .Where(s => s is { Chord.Kind: < 0, IsSilent: false })
            .Select(s => new UnclearStretch(inBar.Key, bars[inBar.Key].Number, s.Start, s.Length)));
        return new FoundHarmony(
            passage.Sheet with { Bars = Written(passage.Sheet, stretches) },
            unclear.OrderBy(u => u.WrittenBar).ThenBy(u => u.Start).ToItems(),
            stretches.Values.Sum(inBar => inBar.Count(s => s.Chord.Kind >= 0)));
    }

    // The bars with what was found, and behind it what the file itself says.
    private static Items<WrittenBar> Written(LeadSheet sheet, Dictionary<int, List<Stretch>> stretches)
    {
        var spelling = new ChordSpelling();
        var key = sheet.Key;
        var written = sheet.Bars.ToArray();
        foreach (var (i, bar) in sheet.Bars.Index())
        {
            key = bar.Key ?? key;
            if (stretches.TryGetValue(i, out var inBar))
            {
                var end = inBar[^1].Start + inBar[^1].Length;
                var spans = inBar.Select(s => new ChordSpan(s.Start, s.Length, spelling.Of(s.Chord, key), bar.Chords[0].Where));
                written[i] = bar with { Chords = [.. spans, .. bar.Chords.Where(c => c.Start >= end)] };
            }
        }

        return written.ToItems();
    }

    // How many bars have room before the first symbol, and where it stands in the last of them.
    private static (int Bars, Beats Until) Open(Items<WrittenBar> bars)
    {
        foreach (var (i, bar) in bars.Index())
        {
            if (bar.Chords.FirstOrDefault(c => c.Symbol is not null) is { } first)
            {
                return first.Start > Beats.Zero ? (i + 1, first.Start) : (i, i == 0 ? Beats.Zero : bars[i - 1].Length);
            }
        }

        return (bars.Count, bars[^1].Length);
    }

    private static ChordGuess[] ByMoment(int count, IReadOnlyList<ChordFrom> chords)
    {
        var byMoment = new ChordGuess[count];
        foreach (var chord in chords)
        {
            Array.Fill(byMoment, chord.Chord, chord.From, count - chord.From);
        }

        return byMoment;
    }

    // Moments of one chord that follow each other in a bar.
    private static List<Stretch> Stretches((Moment Moment, ChordGuess Chord)[] moments, Beats end)
    {
        var stretches = new List<Stretch>();
        for (var i = 0; i < moments.Length; i++)
        {
            var (moment, chord) = moments[i];
            var length = (i + 1 < moments.Length ? moments[i + 1].Moment.Start : end) - moment.Start;
            if (stretches is [.., var last] && last.Chord == chord)
            {
                stretches[^1] = last with { Length = last.Length + length, IsSilent = last.IsSilent && moment.IsSilent };
            }
            else
            {
                stretches.Add(new Stretch(moment.Start, length, chord, moment.IsSilent));
            }
        }

        return stretches;
    }

    private sealed record Stretch(Beats Start, Beats Length, ChordGuess Chord, bool IsSilent);
}
