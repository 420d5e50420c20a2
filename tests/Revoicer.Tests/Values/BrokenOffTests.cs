using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Values;

public sealed class BrokenOffTests
{
    [Fact]
    public void Stopped_is_what_says_so_once_or_on_several_cores()
    {
        var stopped = new OperationCanceledException();
        Assert.True(BrokenOff.Is(stopped));
        Assert.True(BrokenOff.Is(new AggregateException(stopped, new AggregateException(new TaskCanceledException()))));
    }

    [Fact]
    public void What_failed_on_any_core_is_not_taken_for_stopped()
    {
        var failed = new InvalidOperationException();
        Assert.False(BrokenOff.Is(failed));
        Assert.False(BrokenOff.Is(new AggregateException(new OperationCanceledException(), failed)));
    }
}
