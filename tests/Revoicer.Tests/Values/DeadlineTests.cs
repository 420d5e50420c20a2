using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Values;

public class DeadlineTests
{
    [Fact]
    public void It_passes_once_its_time_is_over_and_cancels_its_token()
    {
        var clock = new SteppedClock(0);
        using var deadline = Deadline.After(clock, new Seconds(5));
        clock.MoveOn(4.9);
        Assert.False(deadline.HasPassed);
        clock.MoveOn(0.2);
        Assert.True(deadline.HasPassed);
        Assert.True(deadline.Token.IsCancellationRequested);
    }

    [Fact]
    public void A_part_is_a_part_of_what_is_left()
    {
        var clock = new SteppedClock(0);
        using var deadline = Deadline.After(clock, new Seconds(10));
        clock.MoveOn(6);
        using var half = deadline.Part(0.5);
        clock.MoveOn(1.9);
        Assert.False(half.HasPassed);
        clock.MoveOn(0.2);
        Assert.True(half.HasPassed);
        Assert.False(deadline.HasPassed);
    }

    [Fact]
    public void None_never_passes()
    {
        Assert.False(Deadline.None.HasPassed);
        Assert.False(Deadline.None.Part(0).HasPassed);
    }

    [Fact]
    public void Of_one_that_has_passed_every_part_has()
    {
        using var part = SteppedClock.Passed().Part(0.5);
        Assert.True(part.HasPassed);
    }
}
