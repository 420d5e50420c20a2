using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>
/// The places of a bar by their weight: bar, half bar, beat, parts of the beat. Values are written so that the heavier
/// places stay visible (common practice).
/// </summary>
internal sealed class MetricGrid
{
    private static readonly Beats Finest = Beats.OfQuarters(1, 256);

    private readonly Beats[] _units;

    public MetricGrid(Meter meter)
    {
        Meter = meter;
        var units = new List<Beats> { meter.Bar };
        if (meter.BeatsInBar == 4)
        {
            units.Add(meter.Bar / 2);
        }

        units.Add(meter.Beat);
        if (meter.IsCompound)
        {
            units.Add(meter.Beat / 3);
        }

        while (units[^1] > Finest)
        {
            units.Add(units[^1] / 2);
        }

        _units = [.. units.Distinct()];
        BeatLevel = Array.IndexOf(_units, meter.Beat);
    }

    public Meter Meter { get; }

    /// <summary>Which of the units is the beat.</summary>
    public int BeatLevel { get; }

    /// <summary>How many kinds of units there are.</summary>
    public int Levels => _units.Length;

    /// <summary>How long a unit lasts; 0 is the bar.</summary>
    public Beats Unit(int level) => _units[level];

    /// <summary>Whether some unit lasts exactly so long.</summary>
    public bool IsUnit(Beats length) => Array.IndexOf(_units, length) >= 0;

    /// <summary>The largest unit that begins at a place, counted from the start of the metre's bar.</summary>
    public Beats UnitAt(Beats place) => _units.FirstOrDefault(u => u * Beats.WholeTimes(place, u) == place, _units[^1]);

    /// <summary>The heaviest place strictly between two, the first of several alike; null where only finer ones lie there.</summary>
    public Beats? HeaviestBetween(Beats start, Beats end)
    {
        foreach (var unit in _units)
        {
            var place = unit * (Beats.WholeTimes(start, unit) + 1);
            if (place < end)
            {
                return place;
            }
        }

        return null;
    }
}
