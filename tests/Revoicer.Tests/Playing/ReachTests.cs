using FsCheck.Xunit;
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
