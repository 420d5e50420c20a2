using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Tests.Writing;

/// <summary>Arrangements made by hand: an invented tune on an invented tower. Their figures are plausible, not computed.</summary>
internal static class SampleArrangements
{
    private static readonly Seconds Step = new(0.06);

    /// <summary>A pickup, two bars heard twice, a roll into the first chord, a slower last bar.</summary>
    public static Arrangement HarbourLights { get; } = MakeHarbourLights();

    /// <summary>One bell of a tune, one bar, no chord: the least that can be written.</summary>
    public static Arrangement OneStroke { get; } = MakeOneStroke();

    /// <summary>A single bar of 3/4 whose only chord is rolled into its first beat, so that strokes come before the bar.</summary>
    public static Arrangement RollIntoTheStart { get; } = MakeRollIntoTheStart();

    private static Beats Quarters(long numerator, long denominator = 1) => Beats.OfQuarters(numerator, denominator);

    private static WrittenNote Note(int midi) => WrittenNote.AtMidi(midi);

    // A tune in C major, in quarter notes.
    private static SheetNote Written(int midi) => new(
        NoteName.AtFifths(((((7 * midi) + 1) % 12) + 12) % 12 - 1), Quarters(1));

    private static KeySignature Key(string name) =>
        KeySignature.TryParse(name, out var key) ? key : throw new ArgumentException(name, nameof(name));

    private static TowerSummary Tower() => new(
        "Gullhaven", 47, Note(48), Note(96), [Note(49), Note(51)], 0, new Transposition(12));

    private static Arrangement MakeOneStroke()
    {
        var tempi = TempoMap.Steady(new Tempo(Quarters(1), 60));
        var stroke = new Stroke(Note(60), Limb.RightHand, Beats.Zero, Seconds.Zero, Seconds.Zero, Decibels.Zero) { IsTune = true };
        return new Arrangement(
            "One stroke",
            Tower(),
            "balanced",
            null,
            null,
            tempi,
            true,
            [new ArrangedBar(1, 1, Beats.Zero, Quarters(4), new Meter(4, 4))],
            Seconds.Zero,
            [stroke],
            [],
            new Totals(0, 0, 0, [Note(60)], null, 0, Seconds.Zero, 0, []),
            new SearchStatus(0, 0, 1));
    }

    private static Arrangement MakeRollIntoTheStart()
    {
        var tempi = TempoMap.Steady(new Tempo(Quarters(1), 100));
        var shift = Step * 2;
        Items<Stroke> strokes =
        [
            Struck(tempi, shift, 55, Limb.LeftFoot, Beats.Zero, Step * 2),
            Struck(tempi, shift, 71, Limb.LeftHand, Beats.Zero, Step),
            Struck(tempi, shift, 79, Limb.RightHand, Beats.Zero, Seconds.Zero),
        ];
        return MakeOneStroke() with
        {
            Title = "Roll into the start",
            Tempi = tempi,
            Bars = [new ArrangedBar(1, 1, Beats.Zero, Quarters(3), new Meter(3, 4))],
            Shift = shift,
            Strokes = strokes,
        };
    }

    private static Stroke Struck(TempoMap tempi, Seconds shift, int midi, Limb limb, Beats beat, Seconds lead, double level = 0) =>
        new(Note(midi), limb, beat, lead, tempi.At(beat) + shift - lead, new Decibels(level));

    private static Arrangement MakeHarbourLights()
    {
        var tempi = new TempoMap(
        [
            new TempoChange(Beats.Zero, new Tempo(Quarters(1), 84)),
            new TempoChange(Quarters(17), new Tempo(Quarters(1), 60)),
        ]);
        var shift = Step * 2;
        Stroke Hit(int midi, Limb limb, Beats beat, int steps = 0, double level = 0) =>
            Struck(tempi, shift, midi, limb, beat, Step * steps, level);

        Stroke[] tune =
        [
            .. new (int Midi, Beats Beat)[]
            {
                (79, Quarters(0)), (84, Quarters(1)), (83, Quarters(5, 2)), (81, Quarters(3)),
                (81, Quarters(5)), (83, Quarters(7)), (79, Quarters(8)),
                (84, Quarters(9)), (83, Quarters(21, 2)), (81, Quarters(11)),
                (81, Quarters(13)), (83, Quarters(15)), (84, Quarters(17)),
            }.Select(t => Hit(t.Midi, Limb.RightHand, t.Beat, level: 2) with { IsTune = true, Sheet = Written(t.Midi) }),
        ];
        Items<Stroke> first = [Hit(48, Limb.LeftFoot, Quarters(1), 2), Hit(64, Limb.LeftHand, Quarters(1), 1)];
        Items<Stroke> second = [Hit(57, Limb.RightFoot, Quarters(5)), Hit(72, Limb.LeftHand, Quarters(5))];
        Items<Stroke> third = [Hit(55, Limb.LeftFoot, Quarters(7), level: -1.5), Hit(71, Limb.LeftHand, Quarters(8))];
        Items<Stroke> again = [Hit(52, Limb.LeftFoot, Quarters(9)), Hit(72, Limb.LeftHand, Quarters(9))];
        Items<Stroke> last = [Hit(48, Limb.LeftFoot, Quarters(17), 2), Hit(67, Limb.LeftHand, Quarters(17), 1)];
        var strokes = tune.Concat(first).Concat(second).Concat(third).Concat(again).Concat(last)
            .OrderBy(s => s.At).ThenBy(s => s.Note).ToItems();
        return new Arrangement(
            "Harbour Lights",
            Tower(),
            "balanced",
            Key("C"),
            Key("C"),
            tempi,
            false,
            [
                new ArrangedBar(0, 1, Quarters(0), Quarters(1), new Meter(4, 4)) { Offset = Quarters(3) },
                new ArrangedBar(1, 1, Quarters(1), Quarters(4), new Meter(4, 4)) { Written = 1 },
                new ArrangedBar(2, 1, Quarters(5), Quarters(4), new Meter(4, 4)) { Written = 2, EndsSection = true },
                new ArrangedBar(1, 2, Quarters(9), Quarters(4), new Meter(4, 4)) { Written = 1 },
                new ArrangedBar(3, 1, Quarters(13), Quarters(4), new Meter(4, 4)) { Written = 3 },
                new ArrangedBar(4, 1, Quarters(17), Quarters(4), new Meter(4, 4)) { Written = 4, EndsSection = true, Fermatas = [Quarters(0)] },
            ],
            shift,
            strokes,
            [
                RolledC(first),
                MinorOnItsRoot(second),
                SeventhInTwoStrokes(third),
                CAgain(again),
                Silent(),
                LastChord(last),
            ],
            new Totals(
                118_640,
                96.2,
                16.45,
                [.. strokes.Select(s => s.Note).Distinct().Order()],
                Note(57),
                0.8,
                new Seconds(0.71),
                4,
                ["The G on the last beat of bar 3 is struck too soon after the one before it and was left out."])
            {
                Fatigue = Fatigue.Of(strokes, PlayingLimits.Shipped),
            },
            new SearchStatus(118_640, 114_200, 3))
        {
            Wishes = ["bar 2 beat 3: the figure 'bass first'"],
        };
    }

    private static Choice RolledC(Items<Stroke> strokes) => new(
        1, 1, 1, Quarters(1), Quarters(4), "C", null, "rolled", strokes,
        new ClashSplit(14.2, 0, 0, 11.1, 3.1), 16.3, 88.4,
        [
            new PairQuarrel(Note(48), "tierce", new Hertz(312.9), Note(64), "hum", new Hertz(329.6), 0.41, new Seconds(2.36)),
            new PairQuarrel(Note(64), "prime", new Hertz(659.3), Note(48), "deciem", new Hertz(661.9), 0.22, new Seconds(0.31)),
        ],
        [Note(79)],
        [
            new Alternative("together", [Note(48), Note(67)], 1_240, [new PricedTerm("guide tones left out", 6_200), new PricedTerm("roughness", -4_960)]),
            new Alternative("rolled", [Note(48), Note(60), Note(76)], 2_310, [new PricedTerm("roughness", 2_310)]),
        ],
        [new PricedTerm("roughness", 9_800), new PricedTerm("contradiction", 2_100), new PricedTerm("figure", -500)],
        null);

    private static Choice MinorOnItsRoot(Items<Stroke> strokes) => new(
        2, 1, 1, Quarters(5), Quarters(2), "Am", null, "together", strokes,
        new ClashSplit(9.6, 7.9, 1.2, 14.5, 4.2), 19.9, 71.2,
        [
            new PairQuarrel(Note(48), "nominal", new Hertz(523.3), Note(57), "tierce", new Hertz(526.2), 0.35, new Seconds(1.1)),
            new ChordQuarrel(Note(55), "tierce", new Hertz(468.8), PitchClass.Of(10), PitchClass.Of(9), 0.17, new Seconds(0.8)),
        ],
        [Note(48), Note(64)],
        [new Alternative("bass first", [Note(57), Note(64)], -310, [new PricedTerm("roughness", -310)])],
        [new PricedTerm("roughness", 12_000), new PricedTerm("contradiction", 3_400)],
        null);

    private static Choice SeventhInTwoStrokes(Items<Stroke> strokes) => new(
        2, 1, 3, Quarters(7), Quarters(2), "G7", null, "bass first", strokes,
        new ClashSplit(22.5, 6, 4, 27.5, 5), 31.8, 109,
        [
            new PairQuarrel(Note(55), "tierce", new Hertz(468.8), Note(71), "hum", new Hertz(493.9), 0.51, new Seconds(1.64)),
            new PairQuarrel(Note(55), "tierce", new Hertz(468.8), Note(72), "hum", new Hertz(523.3), 0.12, new Seconds(0.9)),
        ],
        [Note(57)],
        [],
        [new PricedTerm("roughness", 24_000)],
        new BarredVoicing("together", [Note(50), Note(71)], 870, "a cadence has its root in the bass"));

    private static Choice CAgain(Items<Stroke> strokes) => new(
        1, 2, 1, Quarters(9), Quarters(4), "C", new NoteName(Letter.E), "together", strokes,
        new ClashSplit(15.1, 8.8, 2.2, 20.1, 6), 20.7, 88.4, [], [Note(55), Note(71)], [], [], null);

    private static Choice Silent() => new(
        3, 1, 1, Quarters(13), Quarters(4), "F/A", null, "none", [],
        new ClashSplit(0, 3.2, 0.4, 1.6, 2), 0, 90.3, [], [], [], [], null);

    private static Choice LastChord(Items<Stroke> strokes) => new(
        4, 1, 1, Quarters(17), Quarters(4), "C", null, "rolled", strokes,
        new ClashSplit(11, 1, 0.5, 9.5, 3), 12.7, 88.4, [], [], [], [], null);
}
