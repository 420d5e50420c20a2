using FsCheck;
using FsCheck.Fluent;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Tests.Writing;

/// <summary>
/// Random arrangements that keep the promises of the record (bars follow each other, times come of tempo, lead and shift,
/// every stroke is the tune's or a choice's, no bell twice at one moment, one price), with odd lengths, names and figures.
/// </summary>
public static class ArrangementGens
{
    private static readonly string[] Words = ["", "C", "Bbm7/Ab", "F\u266Fm", "r\u00E9 \"b\"", "\uD83D\uDD14", "a\tb\nc", "together", "</x>", "\\"];

    private static readonly Meter[] Meters = [new(4, 4), new(3, 4), new(6, 8), new(2, 2), new(12, 8), new(5, 4), new(7, 16)];

    private static readonly int[] Divisions = [1, 1, 2, 2, 3, 4, 5, 6, 7, 8, 12, 16];

    /// <summary>Arrangements of up to eight bars.</summary>
    public static Arbitrary<Arrangement> Arrangement() => MakeArrangement.ToArbitrary();

    private static Gen<string> Word => Gen.Elements(Words);

    private static Gen<double> Figure => Gen.OneOf(
        Gen.Choose(-4000, 400_000).Select(i => i / 32.0),
        Gen.Choose(1, int.MaxValue).Select(i => Math.Sqrt(i) / 7));

    private static Gen<Seconds> Time => Gen.Choose(0, 1_000_000).Select(i => new Seconds(i / 997.0));

    private static Gen<long> Price => Gen.Choose(-9_000_000, 9_000_000).Select(i => i * 131L);

    private static Gen<WrittenNote> Note => Gen.Choose(36, 100).Select(WrittenNote.AtMidi);

    private static Gen<KeySignature?> Key =>
        from fifths in Gen.Choose(-7, 7)
        from mode in Gen.Elements(Enum.GetValues<Mode>())
        from none in Gen.Choose(0, 4)
        select none == 0 ? (KeySignature?)null : new KeySignature(NoteName.AtFifths(fifths - new KeySignature(new NoteName(Letter.C), mode).Fifths), mode);

    private static Gen<Items<T>> Few<T>(Gen<T> one, int most = 4) =>
        from count in Gen.Choose(0, most)
        from list in one.ListOf(count)
        select list.ToItems();

    private static Gen<Arrangement> MakeArrangement =>
        from bars in Bars
        from tempi in Tempi(bars[^1].Start + bars[^1].Length)
        from struck in Few(Struck(bars), 40)
        let shifted = Shifted(struck, tempi)
        from some in Few(Choice, 5)
        let choices = Placed(some, bars, shifted.Strokes)
        let strokes = TuneAside(shifted.Strokes, choices)
        from title in Word
        from tower in Tower
        from sound in Word
        from written in Key
        from sounding in Key
        from assumed in Gen.Elements(true, false)
        from totals in Totals
        from status in Status
        from layout in Layout
        from others in Few(OtherOctave)
        from wishes in Few(Word)
        from unheard in Few(Gen.Choose(0, 99))
        select new Arrangement(
            title, tower, sound, written, sounding, tempi, assumed, bars, shifted.Shift, strokes, choices, totals with { Price = status.Price }, status)
        {
            TuneOctaves = bars.Count % 3 == 0 ? null : (bars.Count % 3) - 1,
            OtherOctaves = others,
            Layout = layout,
            Wishes = wishes,
            Unheard = unheard,
        };

    private static Gen<OtherOctave> OtherOctave =>
        from octaves in Gen.Choose(-2, 2)
        from costsMore in Price
        from exact in Gen.Elements(true, false)
        select new OtherOctave(octaves, octaves == 2 ? null : costsMore, exact);

    private static Gen<ChosenLayout?> Layout =>
        from tune in Gen.Elements(Enum.GetValues<TuneLayout>())
        from prices in Price.ArrayOf(2)
        from figures in Figure.ArrayOf(3)
        from obstacle in Word
        from kind in Gen.Choose(0, 3)
        select kind == 0 ? null : new ChosenLayout(tune, prices[0])
        {
            Other = kind == 1 ? new OtherLayout(prices[1], figures[0], figures[1], figures[2]) : null,
            Obstacle = kind == 2 ? obstacle : null,
        };

    private static Gen<Items<ArrangedBar>> Bars =>
        from meter in Gen.Elements(Meters)
        from later in Gen.Elements(Meters)
        from count in Gen.Choose(1, 8)
        from change in Gen.Choose(0, 8)
        from pickup in Gen.Elements(false, true)
        select MakeBars(meter, later, count, change, pickup);

    private static Items<ArrangedBar> MakeBars(Meter meter, Meter later, int count, int change, bool pickup)
    {
        var bars = new List<ArrangedBar>();
        var start = Beats.Zero;
        for (var i = 0; i < count; i++)
        {
            var here = i < change ? meter : later;
            var length = pickup && i == 0 ? Beats.OfQuarters(4, here.Lower) : here.Bar;
            bars.Add(new ArrangedBar(pickup ? i : i + 1, 1 + (i % 2), start, length, here)
            {
                Written = i,
                Offset = here.Bar - length,
                EndsSection = i % 3 == 2,
                Key = i % 4 == 3 ? new KeySignature(new NoteName(Letter.E, -1), Mode.Dorian) : null,
                Fermatas = i % 5 == 4 ? [Beats.Zero, Beats.OfQuarters(3, 2)] : [],
            });
            start += length;
        }

        return bars.ToItems();
    }

    private static Gen<Tempo> Speed =>
        from unit in Gen.Elements(Beats.OfQuarters(1), Beats.OfQuarters(3, 2), Beats.OfQuarters(1, 2))
        from perMinute in Gen.Choose(30, 240)
        from part in Gen.Choose(0, 3)
        select new Tempo(unit, perMinute + (part / 3.0));

    private static Gen<TempoMap> Tempi(Beats end) =>
        from first in Speed
        from second in Speed
        from at in Place(end)
        from one in Gen.Elements(true, false)
        select one || at == Beats.Zero
            ? TempoMap.Steady(first)
            : new TempoMap([new TempoChange(Beats.Zero, first), new TempoChange(at, second)]);

    private static Gen<Beats> Place(Beats end) =>
        from division in Gen.Elements(Divisions)
        from step in Gen.Choose(0, (int)(end.Quarters * division))
        select Beats.OfQuarters(step, division);

    private static Gen<Stroke> Struck(Items<ArrangedBar> bars) =>
        from beat in Place(bars[^1].Start + bars[^1].Length)
        from note in Gen.Choose(43, 98)
        from limb in Gen.Elements(Enum.GetValues<Limb>())
        from lead in Gen.Elements(0, 0, 1, 2, 3, 7)
        from level in Gen.Choose(-12, 12)
        select new Stroke(WrittenNote.AtMidi(note), limb, beat, new Seconds(lead * 0.061), Seconds.Zero, new Decibels(level / 2.0))
        {
            IsTune = note > 72,
            Sheet = note > 72 && level % 2 == 0 ? new SheetNote(NoteName.AtFifths(note % 15 - 5), Beats.OfQuarters(1 + note % 4, 2)) : null,
        };

    // A bell struck twice within 10 ms is taken once: no player does that, and a tick could not part the two.
    private static (Items<Stroke> Strokes, Seconds Shift) Shifted(Items<Stroke> struck, TempoMap tempi)
    {
        var shift = struck.Count == 0 ? Seconds.Zero : struck.Max(s => s.Lead);
        var strokes = struck
            .Select(s => s with { At = tempi.At(s.Beat) + shift - s.Lead })
            .OrderBy(s => s.At).ThenBy(s => s.Note)
            .ToList();
        var kept = new List<Stroke>();
        foreach (var stroke in strokes)
        {
            if (!kept.Any(k => k.Note == stroke.Note && (stroke.At - k.At).Value < 0.01))
            {
                kept.Add(stroke);
            }
        }

        return (kept.ToItems(), shift);
    }

    private static Gen<TowerSummary> Tower =>
        from name in Word
        from bells in Gen.Choose(1, 77)
        from missing in Few(Note)
        from measured in Gen.Choose(0, 77)
        from transposition in Gen.Choose(-7, 24)
        select new TowerSummary(
            name, bells, WrittenNote.AtMidi(43), WrittenNote.AtMidi(98), missing, measured, new Transposition(transposition));

    // Each chord fills a bar of its own and has the strokes of its time, unless a roll's leads and others' stand among them.
    private static Items<Choice> Placed(Items<Choice> choices, Items<ArrangedBar> bars, Items<Stroke> strokes) => choices.Zip(bars, (choice, bar) =>
    {
        Stroke[] own = [.. strokes.Where(s => !s.IsTune && s.Beat >= bar.Start && s.Beat < bar.Start + bar.Length)];
        var leads = own.Any(s => s.Lead > Seconds.Zero);
        var isRoll = own.Length > 1 && own.Select(s => s.Lead).Distinct().Count() == own.Length;
        return choice with
        {
            Bar = bar.Number,
            Pass = bar.Pass,
            Beat = (bar.Offset.Quarters / bar.Meter.Beat.Quarters) + 1,
            Start = bar.Start,
            Length = bar.Length,
            Strokes = leads && !isRoll ? [] : own.ToItems(),
            Figure = leads && isRoll ? "rolled" : choice.Figure is "together" ? "broken" : choice.Figure,
        };
    }).ToItems();

    // What no chord has is the tune's.
    private static Items<Stroke> TuneAside(Items<Stroke> strokes, Items<Choice> choices)
    {
        var inChords = choices.SelectMany(c => c.Strokes).ToHashSet();
        return strokes.Select(s => s with { IsTune = !inChords.Contains(s) }).ToItems();
    }

    private static Gen<Choice> Choice =>
        from bar in Gen.Choose(0, 99)
        from pass in Gen.Choose(1, 3)
        from beat in Gen.Choose(4, 16).Select(i => i / 4.0)
        from start in Place(Beats.OfQuarters(8))
        from length in Place(Beats.OfQuarters(4))
        from words in Word.ArrayOf(3)
        from bass in Gen.Choose(-8, 12)
        from figures in Figure.ArrayOf(7)
        from quarrels in Few(Quarrel)
        from ringing in Few(Note)
        from alternatives in Few(Alternative)
        from former in Former
        from terms in Few(Term)
        select new Choice(
            bar,
            pass,
            beat,
            start,
            length,
            words[0],
            bass > 8 ? null : NoteName.AtFifths(bass),
            words[1],
            [],
            new ClashSplit(figures[0], figures[1], figures[2], figures[3], figures[4]) { Tune = figures[5] },
            figures[5],
            figures[6],
            quarrels,
            ringing,
            alternatives,
            terms,
            bass % 3 == 0 ? null : new BarredVoicing(words[1], ringing, 1 + bar, words[2]))
        {
            Hearings = pass,
            Former = bass % 4 == 0 ? null : former,
            ToneNames = [NoteName.AtFifths(bass), NoteName.AtFifths(bass + 4)],
            LeftRinging = bass % 2 == 0 ? [] : [NoteName.AtFifths(bass + 4)],
        };

    private static Gen<Quarrel> Quarrel =>
        from notes in Note.ArrayOf(2)
        from partials in Word.ArrayOf(2)
        from hertz in Gen.Choose(1, 8_000_000).Select(i => new Hertz(i / 999.0)).ArrayOf(2)
        from share in Gen.Choose(0, 1000).Select(i => i / 1000.0)
        from lasts in Time
        from classes in Gen.Choose(0, 11).Select(PitchClass.Of).ArrayOf(2)
        from isPair in Gen.Elements(true, false)
        select isPair
            ? (Quarrel)new PairQuarrel(notes[0], partials[0], hertz[0], notes[1], partials[1], hertz[1], share, lasts)
            : new ChordQuarrel(notes[0], partials[0], hertz[0], classes[0], classes[1], share, lasts);

    private static Gen<PricedTerm> Term =>
        from word in Word
        from price in Price
        select new PricedTerm(word, price);

    private static Gen<Alternative> Alternative =>
        from figure in Word
        from notes in Few(Note)
        from costsMore in Price
        from differences in Few(Term)
        select new Alternative(figure, notes, costsMore, differences);

    private static Gen<FormerChord> Former =>
        from notes in Few(Note)
        from costsMore in Price
        from differences in Few(Term)
        select new FormerChord(notes, costsMore % 2 == 0, costsMore % 3 == 0 ? null : costsMore, differences) { Obstacle = costsMore % 3 == 0 ? new Obstacle((ObstacleKind)(Math.Abs(costsMore) % 2), notes) : null };

    private static Gen<Totals> Totals =>
        from price in Price
        from figures in Figure.ArrayOf(3)
        from bells in Few(Note, 30)
        from pedals in Note
        from none in Gen.Elements(true, false)
        from heaviest in Time
        from strokes in Gen.Choose(0, 60)
        from leftOut in Few(Word)
        from fatigue in Fatigue
        select new Totals(
            price, figures[0], figures[1], bells, none ? null : pedals, figures[2], heaviest, strokes, leftOut)
        {
            Fatigue = fatigue,
            SoftTune = new SoftTune(fatigue.Row, new Decibels(fatigue.Level), fatigue.RowAt),
            StrongBeats = new StrongBeats(strokes / 3, strokes / 2, strokes),
            CloseRootStrokes = strokes,
            CarryAtEqualTouch = new Decibels(strokes / 4.0),
        };

    private static Gen<Fatigue> Fatigue =>
        from figures in Figure.ArrayOf(4)
        from times in Time.ArrayOf(2)
        from row in Gen.Choose(0, 60)
        select new Fatigue(figures[0], times[0], figures[1], figures[2], row, times[1], figures[3]);

    private static Gen<SearchStatus> Status =>
        from price in Price
        from bound in Price
        from none in Gen.Elements(true, false)
        from starts in Gen.Choose(1, 9)
        select new SearchStatus(price, none ? null : bound, starts);
}
