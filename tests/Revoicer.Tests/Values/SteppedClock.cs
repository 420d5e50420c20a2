using Revoicer.Values;

namespace Revoicer.Tests.Values;

/// <summary>A clock on which a second passes whenever it is looked at, or none; its timers never ring.</summary>
/// <param name="secondsALook">How many seconds pass with each look.</param>
internal sealed class SteppedClock(double secondsALook) : TimeProvider
{
    private long _ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => Interlocked.Add(ref _ticks, (long)(secondsALook * TimeSpan.TicksPerSecond));

    public void MoveOn(double seconds) => Interlocked.Add(ref _ticks, (long)(seconds * TimeSpan.TicksPerSecond));

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) => new Silent();

    /// <summary>A deadline that has passed.</summary>
    public static Deadline Passed()
    {
        var deadline = Deadline.After(new SteppedClock(2), new Seconds(1));
        Xunit.Assert.True(deadline.HasPassed);
        return deadline;
    }

    private sealed class Silent : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose()
        {
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
