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
    public static FoundHarmony Of(Passage passage)
    {
        var bars = passage.Sheet.Bars;
        var (count, until) = Open(bars);
        var moments = Moments.Of(passage, count, until);
        if (moments.Count == 0)
        {
            return new FoundHarmony(passage.Sheet, [], 0);
        }

        var chords = ByMoment(moments.Count, ChordSearch.Best(moments));
        var spelling = new ChordSpelling();
        var key = passage.Sheet.Key;
        var written = bars.ToArray();
        var unclear = new List<UnclearStretch>();
        var found = 0;
        foreach (var inBar in moments.Index().GroupBy(m => m.Item.Bar))
        {
            var bar = bars[inBar.Key];
            key = bar.Key ?? key;
            var end = inBar.Key + 1 == count ? until : bar.Length;
            var stretches = Stretches([.. inBar.Select(m => (m.Item, chords[m.Index]))], end);
            var kept = bar.Chords.Where(c => c.Start >= end);
            var spans = stretches.Select(s => new ChordSpan(s.Start, s.Length, spelling.Of(s.Chord, key), bar.Chords[0].Where));
            written[inBar.Key] = bar with { Chords = spans.Concat(kept).ToItems() };
            found += stretches.Count(s => s.Chord.Kind >= 0);
            unclear.AddRange(stretches.Where(s => s is { Chord.Kind: < 0, IsSilent: false }).Select(s => new UnclearStretch(inBar.Key, bar.Number, s.Start, s.Length)));
        }

        return new FoundHarmony(passage.Sheet with { Bars = written.ToItems() }, unclear.ToItems(), found);
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
