using System.Globalization;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.ChordGrid;

/// <summary>Reads raw bars as chords in time.</summary>
/// <param name="meter">The metre; null where the head's could not be read, so that no bar is blamed for its length.</param>
/// <param name="pickup">Beats of the first bar where it is not whole.</param>
/// <param name="problems">Takes what is wrong.</param>
/// <param name="warnings">Takes what was passed over or chosen.</param>
internal sealed class BarReader(Meter? meter, int? pickup, List<Problem> problems, List<Problem> warnings)
{
    private const string WhatABarHolds = "a chord symbol such as C, F#m7 or Bb/D, N.C., '/' or '%'";

    private readonly Meter _meter = meter ?? new Meter(4, 4);
    private readonly bool _knowsBeats = meter is not null;


    /// <summary>The bars as written; a bar with a problem is given empty.</summary>
    public IReadOnlyList<WrittenBar> Read(IReadOnlyList<RawBar> raw)
    {
        var bars = new List<WrittenBar>();
        foreach (var (i, bar) in raw.Index())
        {
            var beats = i == 0 && pickup is { } upbeat ? upbeat : _meter.BeatsInBar;
            var length = _meter.Beat * beats;
            var number = pickup is null ? i + 1 : i;
            var chords = bar.Entries.Any(e => e.Text == "%")
                ? Repeated(bar, length, bars.LastOrDefault())
                : Spread(bar, beats, length);
            var ends = bar.EndsSection || i + 1 == raw.Count;
            bars.Add(new WrittenBar(number, _meter, length, chords, ends));
        }

        return bars;
    }

    private Items<ChordSpan> Repeated(RawBar bar, Beats length, WrittenBar? before)
    {
        var sign = bar.Entries.First(e => e.Text == "%");
        var (found, expected) = (bar, before) switch
        {
            ({ Entries.Count: > 1 }, _) => ("'%' stands with other chords", "'%' alone in its bar, or '/' for a beat"),
            (_, null) => ("'%' has no bar before it", "chords"),
            ({ Ending: 2 }, _) => ("'%' begins a second ending, before which two bars can stand", "its chords"),
            _ when before.Length != length => ("'%' after a bar of another length", "its chords"),
            _ => ("", ""),
        };
        if (found.Length > 0)
        {
            problems.Add(new Problem(sign.Where, found, expected));
            return [];
        }

        return before!.Chords.Select(c => c with { Where = sign.Where }).ToItems();
    }

    private Items<ChordSpan> Spread(RawBar bar, int beats, Beats length)
    {
        var count = bar.Entries.Count;
        var fits = beats % count == 0;
        if (!fits && _knowsBeats)
        {
            problems.Add(new Problem(bar.Where, Counted(count, "chord") + " in a bar of " + Counted(beats, "beat"), WhatFits(bar, beats)));
        }

        var spans = new List<ChordSpan>();
        foreach (var (i, entry) in bar.Entries.Index())
        {
            var share = fits ? length / count : length;
            if (entry.Text != "/")
            {
                spans.Add(new ChordSpan(share * i, share, Symbol(entry), entry.Where));
            }
            else if (spans.Count > 0)
            {
                spans[^1] = spans[^1] with { Length = spans[^1].Length + share };
            }
            else
            {
                problems.Add(new Problem(entry.Where, "'/' has no chord before it in its bar", "a chord symbol"));
                return [];
            }
        }

        return spans.ToItems();
    }

    private ChordSymbol? Symbol(GridPiece.Entry entry)
    {
        switch (ChordSymbolReader.Read(entry.Text, entry.Where))
        {
            case Reading<ChordText>.Refused refused:
                problems.AddRange(refused.Problems);
                return null;
            case Reading<ChordText>.Accepted { Value: ChordText.Chord chord } accepted:
                warnings.AddRange(accepted.Warnings);
                return chord.Symbol;
            case Reading<ChordText>.Accepted { Value: ChordText.NoChord }:
                return null;
            case Reading<ChordText>.Accepted { Value: ChordText.Alternate alternate }:
                problems.Add(new Problem(entry.Where, "a chord in brackets is not played", $"'{Quoted.Text(alternate.Symbol.ToString())}', or the alternate in a comment"));
                return null;
            default:
                problems.Add(new Problem(entry.Where, $"'{Quoted.Text(entry.Text)}' is no chord", WhatABarHolds));
                return null;
        }
    }

    // Bars have two, three or four beats, so a number that does not divide them is one short of one that does, or too large.
    private static string WhatFits(RawBar bar, int beats)
    {
        var texts = bar.Entries.Select(e => Quoted.Text(e.Text)).ToArray();
        if (texts.Length > beats)
        {
            return "at most one chord a beat";
        }

        var spellings = Enumerable.Range(1, texts.Length)
            .Select(i => $"'{string.Join(' ', [.. texts[..i], "/", .. texts[i..]])}'")
            .Distinct();
        return string.Join(" or ", spellings);
    }

    private static string Counted(int count, string thing) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {thing}{(count == 1 ? "" : "s")}");
}
