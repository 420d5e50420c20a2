using Revoicer.Smf;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Midi;

/// <summary>When the ticks of a file are heard.</summary>
internal sealed class TickTimes
{
    private readonly int _division;
    private readonly long[] _ticks;
    private readonly int[] _microseconds;
    private readonly double[] _seconds;

    /// <summary>Times by the speeds of a file.</summary>
    /// <param name="speeds">The speeds in order of time; of several at one tick the last holds.</param>
    /// <param name="division">Ticks of a quarter.</param>
    public TickTimes(IReadOnlyList<SpeedEvent> speeds, int division)
    {
        _division = division;
        SpeedEvent[] all = [new(0, SmfNumbers.AssumedQuarter), .. speeds];
        _ticks = [.. all.Select(s => s.Tick)];
        _microseconds = [.. all.Select(s => s.Microseconds)];
        _seconds = new double[all.Length];
        for (var i = 1; i < all.Length; i++)
        {
            _seconds[i] = _seconds[i - 1] + ((_ticks[i] - _ticks[i - 1]) * TickAt(i - 1).Value);
        }
    }

    /// <summary>When a tick is heard, from the start of the file.</summary>
    public Seconds At(long tick)
    {
        var speed = Speed(tick);
        return new Seconds(_seconds[speed] + ((tick - _ticks[speed]) * TickAt(speed).Value));
    }

    /// <summary>How long a tick lasts at a place.</summary>
    public Seconds TickFrom(long tick) => TickAt(Speed(tick));

    private Seconds TickAt(int speed) => new(_microseconds[speed] * 1e-6 / _division);

    // The last speed at or before a tick.
    private int Speed(long tick)
    {
        var (low, high) = (0, _ticks.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = _ticks[middle] <= tick ? (middle, high) : (low, middle - 1);
        }

        return low;
    }
}
