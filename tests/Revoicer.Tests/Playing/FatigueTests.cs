using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Playing;

public sealed class FatigueTests
{
    private static readonly WrittenNote Heavy = WrittenNote.AtMidi(48);

    // In the long run the level is the number of heavy strokes in 10 s: a sum of e^(-k/10) over all k is 1 / (1 - e^(-1/10)).
    [Fact]
    public void A_heavy_stroke_a_second_comes_to_ten_and_a_half()
    {
        var fatigue = Of([.. Enumerable.Range(0, 300).Select(i => Strokes.Of(Heavy, Limb.LeftFoot, new Seconds(i)))]);
        Assert.Equal(1 / (1 - Math.Exp(-0.1)), fatigue.Level, 9);
        Assert.Equal((300, 10.0, 20.0, 8.0), (fatigue.Row, fatigue.Tires, fatigue.TooMuch, fatigue.RowTires));
    }

    [Law]
    public void It_is_what_every_stroke_has_left_at_the_worst_of_them(int seed)
    {
        var random = new Random(seed);
        Stroke[] strokes = [.. Enumerable.Range(0, random.Next(1, 30)).Select(_ =>
            Strokes.Of(WrittenNote.AtMidi(random.Next(40, 70)), (Limb)random.Next(4), new Seconds(random.Next(600) / 10.0)))];
        var heavy = strokes.Where(s => s.Note.Midi < 60).ToArray();
        var worst = heavy.Select(last => heavy.Where(s => s.At.Value <= last.At.Value).Sum(s => Math.Exp(-(last.At - s.At).Value / 10))).DefaultIfEmpty(0).Max();

        Assert.Equal(worst, Of(strokes).Level, 9);
    }

    // Two seconds are a rest (playing-limits.tsv, heavy_strokes_one_foot_no_rest); the other foot is one too.
    [Theory]
    [InlineData("L0 L1 L2 L3.9", 4, 0)]
    [InlineData("L0 L1 L3 L4 L5", 3, 3)]
    [InlineData("L0 R1 L2 R3", 1, 0)]
    [InlineData("", 0, 0)]
    public void A_row_ends_with_a_rest(string strokes, int row, double from)
    {
        var fatigue = Of([.. strokes.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(s =>
            Strokes.Of(Heavy, s[0] == 'L' ? Limb.LeftFoot : Limb.RightFoot, new Seconds(double.Parse(s[1..], System.Globalization.CultureInfo.InvariantCulture))))]);
        Assert.Equal((row, from), (fatigue.Row, fatigue.RowAt.Value));
    }

    [Fact]
    public void Light_bells_do_not_tire() =>
        Assert.Equal((0.0, 0), (Of([Strokes.Of(WrittenNote.AtMidi(60), Limb.LeftFoot, new Seconds(1))]).Level, Of([]).Row));

    private static Fatigue Of(Stroke[] strokes) => Fatigue.Of(strokes, PlayingLimits.Shipped);
}
