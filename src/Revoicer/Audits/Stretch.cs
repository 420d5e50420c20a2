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
        return cut.Concat(Between(chords, cut))
            .OrderBy(s => s.Start)
            .Select(s => s with { Strokes = strokes.Where(n => !n.IsTune && n.Beat >= s.Start && n.Beat < s.End).ToItems() })
            .Where(s => s.Symbol is not null || s.Strokes.Count > 0)
            .ToItems();
    }

    /// <summary>The same on the clock of the piece as played.</summary>
    public ChordInTime InTime(TempoMap tempi, Seconds shift, Transposition transposition) => new(
        Symbol is { } chord ? new ChordClasses(chord.PitchClasses, chord.Third).Moved(transposition.Semitones) : ChordClasses.None,
        tempi.At(Start) + shift,
        tempi.At(End) + shift,
        Strokes);

    private static IEnumerable<Stretch> Between(LeadSheet sheet, Stretch[] cut)
    {
        foreach (var played in sheet.Played)
        {
            var (from, end) = (played.Start, played.Start + sheet.Bars[played.Written].Length);
            foreach (var chord in cut.Where(c => c.Start < end && c.End > played.Start))
            {
                if (chord.Start > from)
                {
                    yield return new Stretch(from, chord.Start - from, null, []);
                }

                from = chord.End > from ? chord.End : from;
            }

            if (from < end)
            {
                yield return new Stretch(from, end - from, null, []);
            }
        }
    }
}
