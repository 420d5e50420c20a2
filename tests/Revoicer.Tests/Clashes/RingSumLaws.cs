using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Clashes;

/// <summary>The clash that is added up stroke by stroke is that of the plain double loop over all pairs of strokes, on random bells and strokes.</summary>
public sealed class RingSumLaws
{
    private const int Windows = 4;

    private static readonly ChordClasses[] Chords = [ClashBells.Chord("0 4* 7"), ClashBells.Chord("5 8* 0"), ClashBells.Chord("7 11* 2"), ClashBells.Chord("2 6* 9")];

    /// <summary>A dose is bilinear in the amplitudes of two strokes, so sums may be formed before the product.</summary>
    [Law(MaxTest = 60)]
    public void What_each_stroke_adds_is_the_sum_over_all_struck_before_it(int seed)
    {
        var (doses, strokes) = Scene(seed);
        var added = doses.Sums(strokes).Added(TestContext.Current.CancellationToken);
        for (var later = 0; later < strokes.Length; later++)
        {
            var (others, tune) = (0.0, 0.0);
            for (var earlier = 0; earlier < later; earlier++)
            {
                var (a, b) = (strokes[earlier], strokes[later]);
                var dose = a.Touch * b.Touch * doses.Roughness(a.Bell, b.Bell, b.At - a.At);
                (others, tune) = a.IsTune && b.IsTune ? (others, tune + dose) : (others + dose, tune);
            }

            Near(others, added[later].Others);
            Near(tune, added[later].Tune);
        }
    }

    /// <summary>Likewise within windows of time, each pair told by the older of its strokes, and contradiction by its own.</summary>
    [Law(MaxTest = 60)]
    public void The_clash_of_a_window_is_the_sum_over_all_pairs_in_it(int seed)
    {
        var (doses, strokes) = Scene(seed);
        var random = new Random(seed ^ 77);
        double[] cuts = [.. Enumerable.Range(0, Windows + 1).Select(_ => random.NextDouble() * 6).Order()];
        RungWindow[] windows = [.. Enumerable.Range(0, Windows).Select(i => Window(cuts[i], cuts[i + 1] + 0.01, i))];
        var found = doses.Sums(strokes).Of(windows, 0, TestContext.Current.CancellationToken);
        foreach (var (window, clash) in windows.Zip(found))
        {
            var (parts, tune) = Plain(doses, strokes, window);
            Near(tune, clash.Tune);
            for (var age = 0; age < parts.Length; age++)
            {
                Near(parts[age], clash.Parts[age]);
            }
        }
    }

    /// <summary>Many windows are parted among the cores; those of a part are what they are where nothing is parted, to the last bit.</summary>
    [Law(MaxTest = 10)]
    public void Parts_of_many_windows_do_not_show(int seed)
    {
        var (doses, strokes) = Scene(seed);
        var many = ManyWindows();
        var all = doses.Sums(strokes).Of(many, 2, TestContext.Current.CancellationToken);
        var unparted = doses.Sums(strokes).Of(many[..500], 2, TestContext.Current.CancellationToken);
        foreach (var (expected, found) in unparted.Zip(all))
        {
            Assert.Equal(expected.Parts, found.Parts);
            Assert.Equal(
                (expected.Contradiction, expected.TuneRoughness, expected.TuneContradiction),
                (found.Contradiction, found.TuneRoughness, found.TuneContradiction));
            Assert.Equal(expected.Largest, found.Largest);
        }
    }

    [Fact]
    public void Sums_over_many_windows_can_be_stopped()
    {
        var (doses, strokes) = Scene(1);
        Assert.ThrowsAny<OperationCanceledException>(() => doses.Sums(strokes).Of(ManyWindows(), 0, new CancellationToken(canceled: true)));
    }

    // A little less than 6 s in stretches of 5 ms.
    private static RungWindow[] ManyWindows() => [.. Enumerable.Range(0, 1100).Select(i => Window(i * 0.005, (i + 1) * 0.005, i * Windows / 1100))];

    private static RungWindow Window(double from, double to, int chord) =>
        new(new Seconds(from), new Seconds(to), chord, [new ReigningChord(Chords[chord], new Seconds(from), new Seconds(to))]);

    private static (double[] Parts, double Tune) Plain(TowerDoses doses, RungStroke[] strokes, RungWindow window)
    {
        var (parts, tune) = (new double[3], 0.0);
        for (var later = 0; later < strokes.Length; later++)
        {
            var b = strokes[later];
            if (b.At >= window.To)
            {
                continue;
            }

            Add(b.IsTune, Age(b), b.Touch * b.Touch * doses.Contradiction(b.Bell, window.Reigning[0].Classes, window.From - b.At, window.To - b.At));
            for (var earlier = 0; earlier < later; earlier++)
            {
                var a = strokes[earlier];
                Add(a.IsTune && b.IsTune, Math.Max(Age(a), Age(b)), a.Touch * b.Touch * doses.RoughnessWithin(a.Bell, b.Bell, b.At - a.At, window.From - a.At, window.To - a.At));
            }
        }

        return (parts, tune);

        int Age(RungStroke stroke) => Math.Clamp(window.Chord - stroke.Chord, 0, 2);

        void Add(bool isTune, int age, double dose)
        {
            tune += isTune ? dose : 0;
            parts[age] += isTune ? 0 : dose;
        }
    }

    private static (TowerDoses Doses, RungStroke[] Strokes) Scene(int seed)
    {
        var random = new Random(seed);
        var tower = ClashBells.Of(Enumerable.Range(0, 5).Select(i => BellOf(60 + (3 * i), random)));
        RungStroke[] strokes =
        [
            .. Enumerable.Range(0, 14)
                .Select(_ => new RungStroke(
                    random.Next(5), new Seconds(random.Next(60) / 10.0), random.Next(-1, Windows), 0.5 + random.NextDouble(), random.Next(3) == 0))
                .OrderBy(s => s.At.Value),
        ];
        return (new TowerDoses(tower, Fade.Default), strokes);
    }

    // Partials within two octaves, so that many pairs are rough; decays from a tenth of a second to ten.
    private static Bell BellOf(int strike, Random random) => new(
        WrittenNote.AtMidi(strike - 12),
        StrikeNote.AtMidi(strike),
        new Hertz(440 * Math.Pow(2, (strike - 69) / 12.0)),
        Enumerable.Range(0, 4)
            .Select(_ => new Partial("partial", new Hertz(200 + (600 * random.NextDouble())), 2 * random.NextDouble(), new Seconds(Math.Pow(10, (2 * random.NextDouble()) - 1))))
            .OrderBy(p => p.Frequency.Value)
            .ToItems(),
        IsMeasured: true);

    private static void Near(double expected, double found) =>
        Assert.True(Math.Abs(expected - found) <= 1e-9 * (1 + Math.Abs(expected)), $"expected {expected}, found {found}");
}
