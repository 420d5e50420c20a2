using FsCheck.Xunit;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Playing;

[Properties(Arbitrary = [typeof(PlayingGens)])]
public sealed class ReachTests
{
    [Law(MaxTest = 5000)]
    public void Reach_lets_a_stroke_follow_where_the_checker_finds_nothing(NextStroke next)
    {
        var reach = new Reach(PlayingLimits.For(next.Tower), next.Tower.Transposition);
        var breaches = new Checker(next.Tower).Check([next.First, next.Second]);

        var follows = reach.MayFollow(
            next.First.Note, next.First.Limb, next.Second.Note, next.Second.Limb, next.Second.At - next.First.At);

        Assert.True(follows == (breaches.Count == 0), $"reach says {follows}, the checker {breaches}");
    }

    [Law]
    public bool More_time_never_makes_a_move_harder(NextStroke next)
    {
        var reach = new Reach(PlayingLimits.For(next.Tower), next.Tower.Transposition);
        var has = next.Second.At - next.First.At;
        bool Follows(Seconds time) => reach.MayFollow(next.First.Note, next.First.Limb, next.Second.Note, next.Second.Limb, time);

        // One grip may fall apart into two strokes that are too far apart for a grip and too close for a move.
        return has < reach.AtOnce || !Follows(has) || Follows(has + new Seconds(0.05));
    }

    [Law]
    public bool Nothing_looks_back_further_than_the_longest_easy_time(NextStroke next)
    {
        var reach = new Reach(PlayingLimits.For(next.Tower), next.Tower.Transposition);
        return reach.EasyMoveTime(next.First.Limb, next.First.Note, next.Second.Note) <= reach.LongestEasyTime
            && reach.MayFollow(next.First.Note, next.First.Limb, next.Second.Note, next.Second.Limb, reach.LongestEasyTime);
    }

    // Every two keys of the tower, either way round: the hands may cross by an octave at most (playing-limits.tsv, hands_crossed).
    [Theory]
    [InlineData("")]
    [InlineData("hands_crossed = { hard = 0 }\nhands_apart = { hard = 20 }\nfeet_apart = { hard = 12 }")]
    public void Two_limbs_take_at_once_what_the_checker_lets_them(string limits)
    {
        var tower = Strokes.Tower(limits);
        var (reach, checker) = (new Reach(PlayingLimits.For(tower), tower.Transposition), new Checker(tower));
        foreach (var left in tower.Bells.Select(b => b.Note))
        {
            foreach (var right in tower.Bells.Select(b => b.Note).Where(n => n != left))
            {
                var hands = left < right ? reach.HandsTake(left, right) : reach.HandsTake(right, left) && reach.HandsCross(left, right);
                Assert.True(hands == Plays(left, Limb.LeftHand, right, Limb.RightHand), $"hands {left} {right}");
                if (tower.HasPedal(left) && tower.HasPedal(right))
                {
                    Assert.True((left < right && reach.FeetTake(left, right)) == Plays(left, Limb.LeftFoot, right, Limb.RightFoot), $"feet {left} {right}");
                }
            }
        }

        bool Plays(WrittenNote a, Limb one, WrittenNote b, Limb other) =>
            checker.Check([Strokes.Of(a, one, Seconds.Zero), Strokes.Of(b, other, Seconds.Zero)]).Count == 0;
    }

    [Fact]
    public void A_tower_that_stretches_further_is_heard()
    {
        var tower = Strokes.Tower("hand_span = { hard = 7 }\nhands_apart = { hard = 40 }\nfeet_apart = { hard = 12 }\nbells_at_once = { hard = 4 }");
        var reach = new Reach(PlayingLimits.For(tower), tower.Transposition);

        Assert.True(reach.HandTakes(Strokes.Note("C5"), Strokes.Note("G5")));
        Assert.False(reach.HandTakes(Strokes.Note("C5"), Strokes.Note("G#5")));
        Assert.True(reach.HandsTake(Strokes.Note("G#3"), Strokes.Note("C7")));
        Assert.False(reach.FeetTake(Strokes.Note("C3"), Strokes.Note("C#4")));
        Assert.Equal((true, false), (reach.BellsAtOnce(4), reach.BellsAtOnce(5)));
    }
}
