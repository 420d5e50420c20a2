using FsCheck;
using FsCheck.Fluent;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Playing;

public class HandPlanTests
{
    private static readonly Reach Reach = new(PlayingLimits.Shipped, ShippedTowers.Default.Transposition);

    [Fact]
    public void A_line_with_time_stays_in_the_right_hand()
    {
        var line = Line((72, 0), (74, 1), (76, 2), (72, 3));
        Assert.All(HandPlan.Of(Reach, line), hand => Assert.Equal(Limb.RightHand, hand));
    }

    [Fact]
    public void A_quick_leap_takes_both_hands()
    {
        // An octave to and fro in 0.2 s: one hand needs 0.1 + 0.05 log2(1 + 7) = 0.25 s (playing-limits.tsv).
        var line = Line((67, 0), (79, 0.2), (67, 0.4), (79, 0.6));
        var hands = HandPlan.Of(Reach, line);
        Assert.All(hands.Zip(hands.Skip(1)), pair => Assert.NotEqual(pair.First, pair.Second));
    }

    [Fact]
    public void A_line_without_notes_needs_no_hands() => Assert.Empty(HandPlan.Of(Reach, []));

    [Law(MaxTest = 200)]
    public FsCheck.Property No_other_hands_take_less_effort()
    {
        var lines =
            from count in Gen.Choose(1, 7)
            from notes in Gen.Choose(55, 96).ArrayOf(count)
            from gaps in Gen.Choose(5, 60).ArrayOf(count)
            select notes.Select((n, i) => (n, gaps.Take(i).Sum() / 100.0)).ToArray();
        return Prop.ForAll(lines.ToArbitrary(), notes =>
        {
            var line = Line(notes);
            var found = HandPlan.EffortOf(Reach, line, HandPlan.Of(Reach, line));
            var least = Enumerable.Range(0, 1 << line.Length)
                .Min(bits => HandPlan.EffortOf(Reach, line, [.. line.Select((_, i) => (bits >> i & 1) == 0 ? Limb.LeftHand : Limb.RightHand)]));
            Assert.Equal(least, found, 9);
        });
    }

    private static LineNote[] Line(params (int Midi, double At)[] notes) =>
        [.. notes.Select(n => new LineNote(WrittenNote.AtMidi(n.Midi), new Seconds(n.At)))];
}
