using FsCheck;
using FsCheck.Fluent;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Tests.Writing.MusicXml;

/// <summary>
/// Random arrangements of a few bars: an order with repeats and endings, strokes on binary places, triplets and quintuplets,
/// tune notes that last over bar lines, rolls, chords; sometimes a bar differs when it is heard again.
/// </summary>
public static class ScoreGens
{
    private static readonly Meter[] Meters = [new(4, 4), new(3, 4), new(6, 8), new(2, 2), new(2, 4), new(5, 4), new(7, 8), new(12, 8)];

    private static readonly string[] Symbols = ["C", "Gm7", "F/A", "Bb", "D7b9", "Am", "E7sus4", "F#m7b5", "Abmaj7", "C13"];

    // The order in which written bars are heard.
    private static readonly int[][] Orders =
    [
        [0, 1, 2, 3], [0, 1, 0, 1, 2], [0, 1, 2, 1, 2, 3], [0, 1, 2, 0, 1, 3], [0, 1, 2, 3, 1, 2, 4, 5], [0, 0, 0, 1], [0, 1, 0, 2, 0, 3],
        [0, 1, 0, 1, 0, 2, 3], [0, 1, 0, 1, 2, 3, 2, 3], [0, 1, 0, 1, 2, 0, 1], [0, 1, 2, 3, 0, 1], [0, 1, 2, 1, 3, 0, 4], [1, 0, 1, 2], [0],
        [0, 1, 0, 1, 0, 1, 2, 1, 2], [0, 1, 1, 2, 0, 1, 1, 2, 3],
    ];

    public static Arbitrary<Arrangement> Scores() => (
        from order in Gen.Elements(Orders)
        from meter in Gen.Elements(Meters)
        from later in Gen.Elements(meter, meter, Meters[1])
        from pickup in Gen.Elements(false, false, true)
        from bars in Bar.ArrayOf(6)
        from again in Bar
        from odd in Gen.Choose(0, 20)
        from key in Gen.Choose(-6, 6)
        from speed in Gen.Choose(20, 300)
        select Make(order, [.. Enumerable.Range(0, 6).Select(i => i < 3 ? meter : later)], pickup, bars, odd < order.Length ? (odd, again) : null, key, speed)).ToArbitrary();

    private sealed record Part(Limb Limb, int Midi, int Step, int Division, int Length, bool IsRolled, bool IsTune);

    private sealed record Content(Items<Part> Parts, Items<string> Symbols);

    private static Gen<Content> Bar =>
        from count in Gen.Choose(0, 7)
        from parts in Stroke.ArrayOf(count)
        from symbols in Gen.Elements(Symbols).ArrayOf(2)
        from two in Gen.Elements(true, false)
        select new Content(parts.ToItems(), symbols.Take(two ? 2 : 1).ToItems());

    private static Gen<Part> Stroke =>
        from limb in Gen.Elements(Enum.GetValues<Limb>())
        from midi in limb is Limb.LeftFoot or Limb.RightFoot ? Gen.Choose(45, 67) : Gen.Choose(55, 98)
        from division in Gen.Elements(1, 1, 2, 2, 2, 4, 8, 3, 3, 6, 5)
        from step in Gen.Choose(0, 40)
        from length in Gen.Choose(1, 12)
        from rolled in Gen.Choose(0, 5)
        from tune in Gen.Choose(0, 2)
        select new Part(limb, midi, step, division, length, rolled == 0, tune == 0 && limb is Limb.RightHand or Limb.LeftHand);

    private static Arrangement Make(int[] order, Meter[] meters, bool pickup, Content[] contents, (int At, Content With)? odd, int key, int speed)
    {
        var (bars, strokes, choices, start) = (new List<ArrangedBar>(), new List<Stroke>(), new List<Choice>(), Beats.Zero);
        var passes = new int[6];
        for (var i = 0; i < order.Length; i++)
        {
            var written = order[i];
            var isPickup = pickup && written == 0;
            var length = isPickup ? meters[0].Beat : meters[written].Bar;
            var bar = new ArrangedBar(pickup ? written : written + 1, ++passes[written], start, length, meters[written])
            {
                Written = written,
                Offset = meters[written].Bar - length,
                EndsSection = i + 1 == order.Length || order[i + 1] <= written,
            };
            bars.Add(bar);
            Fill(bar, odd is { } other && other.At == i ? other.With : contents[written], strokes, choices);
            start += length;
        }

        var tempi = TempoMap.Steady(new Tempo(meters[0].Beat, speed));
        return SampleArrangements.OneStroke with
        {
            Title = "Six Bollards",
            WrittenKey = new KeySignature(NoteName.AtFifths(key), Mode.Major),
            SoundingKey = new KeySignature(NoteName.AtFifths(key), Mode.Major),
            Tempi = tempi,
            Bars = bars.ToItems(),
            Strokes = strokes.OrderBy(s => s.Beat).ThenBy(s => s.Note).ToItems(),
            Choices = choices.ToItems(),
        };
    }

    // A limb strikes a bell once at a place; what a bar's last part would put behind its end is left out.
    private static void Fill(ArrangedBar bar, Content content, List<Stroke> strokes, List<Choice> choices)
    {
        var own = new List<Stroke>();
        foreach (var part in content.Parts)
        {
            var at = Beats.OfQuarters(part.Step, part.Division);
            var isTaken = own.Any(s => s.Beat == bar.Start + at && s.Note.Midi == part.Midi);
            if (at < bar.Length && !isTaken)
            {
                var stroke = new Stroke(WrittenNote.AtMidi(part.Midi), part.Limb, bar.Start + at, new Seconds(part.IsRolled && !part.IsTune ? 0.06 : 0), Seconds.Zero, Decibels.Zero)
                {
                    IsTune = part.IsTune,
                    Sheet = part.IsTune ? new SheetNote(new NoteName(Letter.C), Beats.OfQuarters(part.Length, part.Division)) : null,
                };
                own.Add(stroke);
            }
        }

        strokes.AddRange(own);
        var each = bar.Length / content.Symbols.Count;
        for (var i = 0; i < content.Symbols.Count; i++)
        {
            var (from, to) = (bar.Start + (each * i), bar.Start + (each * (i + 1)));
            choices.Add(new Choice(
                bar.Number, bar.Pass, 1, from, each, content.Symbols[i], null, "together",
                own.Where(s => !s.IsTune && s.Beat >= from && s.Beat < to).ToItems(),
                new ClashSplit(0, 0, 0, 0, 0), 0, 0, [], [], [], [], null));
        }
    }
}
