using Revoicer.Arrangements;
using Revoicer.Chords;
using Revoicer.Clashes;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Audits;

/// <summary>A stretch of the piece as heard under one chord, or under none.</summary>
/// <param name="Start">Where it begins.</param>
/// <param name="Length">How long it lasts.</param>
/// <param name="Symbol">Its chord; null for none.</param>
/// <param name="Strokes">What belongs to it, a tune told apart left out, in order of time.</param>
internal sealed record Stretch(Beats Start, Beats Length, ChordSymbol? Symbol, Items<Stroke> Strokes)
{
    /// <summary>Where it ends.</summary>
    public Beats End => Start + Length;

    /// <summary>
    /// The stretches of a passage: the slots into which a draft would cut its chords, and between them, bar by bar, whatever
    /// is struck under no chord.
    /// </summary>
    public static Items<Stretch> Of(LeadSheet chords, TempoMap tempi, Items<Stroke> strokes)
    {
        var cut = SlotCutting.Cut(chords, tempi).InTime()
            .Select(h => new Stretch(h.Hearing.Start, h.Slot.Length, h.Slot.Symbol, []))
            .ToArray();
        var rest = strokes.Where(n => !n.IsTune).GroupBy(n => n.Beat).OrderBy(same => same.Key).Select(same => (Beat: same.Key, Strokes: same.ToArray())).ToArray();
        return cut.Concat(Between(chords, cut))
            .OrderBy(s => s.Start)
            .Select(s => s with { Strokes = Within(s) })
            .Where(s => s.Symbol is not null || s.Strokes.Count > 0)
            .ToItems();

        Items<Stroke> Within(Stretch stretch)
        {
            var first = Sorted.LastUpTo(rest, stretch.Start, r => r.Beat);
            first = first >= 0 && rest[first].Beat == stretch.Start ? first : first + 1;
            return PassageStrokes.InOrder(rest.Skip(first).TakeWhile(r => r.Beat < stretch.End).SelectMany(r => r.Strokes));
        }
    }

    /// <summary>The same on the clock of the piece as played.</summary>
    public ChordInTime InTime(TempoMap tempi, Seconds shift, Transposition transposition) => new(
        Symbol is { } chord ? new ChordClasses(chord.PitchClasses, chord.Third).Moved(transposition.Semitones) : ChordClasses.None,
        tempi.At(Start) + shift,
        tempi.At(End) + shift,
        Strokes);

    // What of each bar no chord covers; the chords are in order and do not overlap.
    private static IEnumerable<Stretch> Between(LeadSheet sheet, Stretch[] cut)
    {
        var next = 0;
        foreach (var played in sheet.Played)
        {
            var (from, end) = (played.Start, played.Start + sheet.Bars[played.Written].Length);
            while (next < cut.Length && cut[next].End <= from)
            {
                next++;
            }

            for (var i = next; i < cut.Length && cut[i].Start < end; i++)
            {
                if (cut[i].Start > from)
                {
                    yield return new Stretch(from, cut[i].Start - from, null, []);
                }

                from = cut[i].End > from ? cut[i].End : from;
            }

            if (from < end)
            {
                yield return new Stretch(from, end - from, null, []);
            }
        }
    }
}
