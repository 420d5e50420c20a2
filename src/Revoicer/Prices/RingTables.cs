using System.Collections.Concurrent;
using Revoicer.Clashes;
using Revoicer.Values;

namespace Revoicer.Prices;

/// <summary>
/// The roughness of any two bells of a tower at any delay, in thousandths, worked out once for each delay that occurs.
/// </summary>
internal sealed class RingTables
{
    private readonly TowerDoses _doses;
    private readonly double _weight;
    private readonly int _bells;
    private readonly ConcurrentDictionary<long, int[]> _tables = new();

    private readonly double[] _touch;

    /// <param name="doses">The tower's doses.</param>
    /// <param name="touch">For each bell the factor on its amplitude by which it is struck.</param>
    /// <param name="weight">The sound's factor on roughness.</param>
    public RingTables(TowerDoses doses, double[] touch, double weight)
    {
        _doses = doses;
        _weight = weight;
        _bells = touch.Length;
        _touch = touch;
        Horizon = FindHorizon();
    }

    /// <summary>From this delay on (microseconds) every pair of bells rounds to nothing.</summary>
    public long Horizon { get; }

    /// <summary>The table of a delay: row = earlier bell, column = later bell.</summary>
    public int[] At(long microseconds) => _tables.GetOrAdd(microseconds, delay => Table(new Seconds(delay * 1e-6)));

    private int[] Table(Seconds delay)
    {
        var raw = new double[_bells * _bells];
        _doses.Roughness(delay, raw);
        var table = new int[raw.Length];
        for (var i = 0; i < table.Length; i++)
        {
            table[i] = Thousandths.Of(raw[i] * _weight * _touch[i / _bells] * _touch[i % _bells]);
        }

        return table;
    }

    // Roughness falls with the delay for every pair, so the first whole second at which all round to nothing ends it.
    private long FindHorizon()
    {
        const int longest = 600;
        var seconds = 1;
        while (seconds < longest && Table(new Seconds(seconds)).Any(r => r != 0))
        {
            seconds++;
        }

        return seconds * 1_000_000L;
    }
}
