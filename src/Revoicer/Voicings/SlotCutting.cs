using Revoicer.Chords;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Cuts the chords of a sheet, as heard, into slots. A slot is the stretch of one chord within one bar; a bar line cuts
/// only where the chord has stood for a beat and 0.8 s, so that an anticipated chord is not struck again on the downbeat;
/// long bars are cut again at their strongest inner beat, likewise; the last chord is struck once, unless it stands
/// for more than two bars.
/// </summary>
public static class SlotCutting
{
    // Common practice: a bell's chord is renewed after about four seconds, in bars of three beats after six.
    private static readonly Seconds LongBar = new(4);
    private static readonly Seconds LongBarOfThree = new(6);

    /// <summary>The slots of a sheet at its speeds.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="tempi">Its speeds.</param>
    /// <param name="tune">The tune where it is to be played; null where there is none.</param>
    /// <param name="wish">How the player wants it cut; null for as the sheet itself asks.</param>
    public static SlotPlan Cut(LeadSheet sheet, TempoMap tempi, PlacedTune? tune = null, CutWish? wish = null)
    {
        var apart = (wish ?? CutWish.None).PassesApart;
        var phrases = Phrasing.Of(sheet, (wish ?? CutWish.None).PhraseBars);
        var around = new TuneAround(tune);
        var heard = Stretches(sheet, tempi).ToList();
        var keys = Keys(sheet);
        var phraseOf = PhrasesAsHeard(heard, phrases, apart);
        var cadences = Cadences(heard, phrases);
        var slots = heard
            .Select((stretch, order) => (stretch, order))
            .GroupBy(h => (
                Pass: apart ? h.stretch.Pass : 0, What: h.stretch.Identity(tempi), Tune: around.Within(h.stretch.Start, h.stretch.End)))
            .Select((copies, index) => ToSlot(index, [.. copies], heard, phraseOf, cadences, tempi) with
            {
                HasTuneBelow = tune?.Layout == TuneLayout.Below,
                TuneHere = copies.Key.Tune.Select(n => new SlotTuneNote(n.Note, n.After)).ToItems(),
                Key = keys[copies.First().stretch.Bar],
                Tunes = around.Of(copies.Select(c => (tempi.At(c.stretch.Start), tempi.At(c.stretch.End)))),
            })
            .ToItems();
        return SharedTones.In(new SlotPlan(slots, apart ? phraseOf.DefaultIfEmpty(-1).Max() + 1 : phrases.Count) { Tune = tune });
    }

    // The phrase of each stretch. Where passes are apart, a phrase that is heard again is another one.
    private static int[] PhrasesAsHeard(List<Stretch> heard, Phrasing phrases, bool apart)
    {
        var phraseOf = heard.Select(s => phrases.Of(s.Bar)).ToArray();
        if (!apart)
        {
            return phraseOf;
        }

        var asHeard = new int[heard.Count];
        for (var i = 1; i < asHeard.Length; i++)
        {
            var isNew = phraseOf[i] != phraseOf[i - 1] || heard[i].Pass != heard[i - 1].Pass;
            asHeard[i] = asHeard[i - 1] + (isNew ? 1 : 0);
        }

        return asHeard;
    }

    private static Slot ToSlot(
        int index,
        (Stretch Stretch, int Order)[] copies,
        List<Stretch> heard,
        int[] phraseOf,
        HashSet<(int Bar, Beats InBar)> cadences,
        TempoMap tempi)
    {
        var (first, order) = copies[0];
        return new Slot(
            index,
            first.Symbol,
            first.Written.Number,
            first.Written.Offset + first.InBar,
            first.Length,
            tempi.At(first.End) - tempi.At(first.Start),
            first.Written.Meter.Beat,
            first.Written.Meter,
            IsNewChord: IsNewChord(heard, order),
            IsFirst: order == 0,
            IsLast: copies.Any(c => c.Order == heard.Count - 1),
            IsCadence: cadences.Contains((first.Bar, first.InBar)),
            phraseOf[order],
            BeginsPhrase: order == 0 || phraseOf[order - 1] != phraseOf[order],
            copies.Select(c => new Hearing(c.Order, c.Stretch.Pass, c.Stretch.Start, tempi.At(c.Stretch.Start), tempi.At(c.Stretch.End))
            {
                IsNewChord = IsNewChord(heard, c.Order),
            }).ToItems());
    }

    private static bool IsNewChord(List<Stretch> heard, int order) =>
        order == 0 || heard[order - 1].Symbol != heard[order].Symbol || heard[order - 1].End < heard[order].Start;

    // For each bar the last change in the written order, as a player reads it.
    private static KeySignature?[] Keys(LeadSheet sheet)
    {
        var keys = new KeySignature?[sheet.Bars.Count];
        for (var bar = 0; bar < keys.Length; bar++)
        {
            keys[bar] = sheet.Bars[bar].Key ?? (bar == 0 ? sheet.Key : keys[bar - 1]);
        }

        return keys;
    }

    private static IEnumerable<Stretch> Stretches(LeadSheet sheet, TempoMap tempi)
    {
        Stretch? open = null;
        var chords = HeardChords.Of(sheet);
        foreach (var (i, played) in sheet.Played.Index())
        {
            var written = sheet.Bars[played.Written];
            foreach (var span in Parts(written, chords[i], tempi.At(played.Start + written.Length) - tempi.At(played.Start)))
            {
                var start = played.Start + span.Start;
                if (open is not null && open.Symbol == span.Symbol && open.End == start && !Cuts(open, sheet, chords, tempi))
                {
                    open = open with { Length = open.Length + span.Length };
                    continue;
                }

                if (open is not null)
                {
                    yield return open;
                }

                open = span.Symbol is null
                    ? null
                    : new Stretch(span.Symbol, played.Written, written, played.Pass, span.Start, start, span.Length);
            }
        }

        if (open is not null)
        {
            yield return open;
        }
    }

    // The stretches of a bar, one for each chord; those of a long bar parted at its strongest inner beat.
    private static IEnumerable<ChordSpan> Parts(WrittenBar bar, Items<ChordSpan> chords, Seconds duration)
    {
        // Bars that no beat parts evenly are taken as 1 + 2, 2 + 3, 3 + 4 (common practice).
        var inner = (bar.Meter.InnerBeat ?? bar.Meter.Beat * (bar.Meter.BeatsInBar / 2)) - bar.Offset;
        var isLong = duration > (bar.Meter.BeatsInBar == 3 ? LongBarOfThree : LongBar);
        foreach (var span in Merged(chords))
        {
            if (isLong && span.Start < inner && inner < span.Start + span.Length)
            {
                yield return span with { Length = inner - span.Start };
                yield return span with { Start = inner, Length = span.Start + span.Length - inner };
            }
            else
            {
                yield return span;
            }
        }
    }

    private static List<ChordSpan> Merged(Items<ChordSpan> spans)
    {
        var merged = new List<ChordSpan>();
        foreach (var span in spans)
        {
            if (merged.Count > 0 && merged[^1].Symbol == span.Symbol)
            {
                merged[^1] = merged[^1] with { Length = merged[^1].Length + span.Length };
            }
            else
            {
                merged.Add(span);
            }
        }

        return merged;
    }

    // Whether a chord is struck again at a bar line or the strongest inner beat.
    private static bool Cuts(Stretch open, LeadSheet sheet, Items<Items<ChordSpan>> chords, TempoMap tempi) =>
        open.Length >= open.Written.Meter.Beat
        && tempi.At(open.End) - tempi.At(open.Start) >= Slot.Quick
        && !IsHeldToTheEnd(open, sheet, chords);

    // The last chord is struck once, unless it stands for more than two bars.
    private static bool IsHeldToTheEnd(Stretch open, LeadSheet sheet, Items<Items<ChordSpan>> chords) =>
        sheet.Length - open.Start <= open.Written.Meter.Bar * 2
        && sheet.Played
            .Zip(chords)
            .SelectMany(p => p.Second, (p, c) => (Start: p.First.Start + c.Start, c.Symbol))
            .Where(c => c.Start >= open.Start)
            .All(c => c.Symbol == open.Symbol);

    private static HashSet<(int Bar, Beats InBar)> Cadences(List<Stretch> heard, Phrasing phrases)
    {
        const int fifth = 7;
        var cadences = new HashSet<(int, Beats)>();
        for (var i = 0; i < heard.Count; i++)
        {
            // A repeat sign ends a phrase, also where its first ending leads back into the same one.
            var ends = i + 1 == heard.Count
                || phrases.Of(heard[i + 1].Bar) != phrases.Of(heard[i].Bar)
                || heard[i + 1].Bar < heard[i].Bar;
            if (!ends)
            {
                continue;
            }

            // Where the last chord stands for several slots its arrival counts, and what comes before that.
            var arrival = i;
            while (arrival > 0 && heard[arrival - 1].Symbol == heard[i].Symbol && InOnePhrase(arrival - 1, i))
            {
                arrival--;
            }

            cadences.UnionWith(heard[arrival..(i + 1)].Select(s => (s.Bar, s.InBar)));
            if (arrival > 0
                && InOnePhrase(arrival - 1, i)
                && heard[arrival - 1].Symbol.Root.PitchClass - heard[i].Symbol.Root.PitchClass == fifth)
            {
                cadences.Add((heard[arrival - 1].Bar, heard[arrival - 1].InBar));
            }
        }

        return cadences;

        bool InOnePhrase(int before, int after) =>
            heard[before].End == heard[before + 1].Start && phrases.Of(heard[before].Bar) == phrases.Of(heard[after].Bar);
    }

    /// <summary>One chord as heard, from where it is struck to where the next slot begins.</summary>
    private sealed record Stretch(ChordSymbol Symbol, int Bar, WrittenBar Written, int Pass, Beats InBar, Beats Start, Beats Length)
    {
        public Beats End => Start + Length;

        // What is written in one place, lasts as long and as many seconds is voiced alike, if it is the same chord.
        public (int Bar, Beats InBar, Beats Length, long Microseconds, ChordSymbol Symbol) Identity(TempoMap tempi) =>
            (Bar, InBar, Length, (long)Math.Round((tempi.At(End) - tempi.At(Start)).Value * 1e6), Symbol);
    }
}
