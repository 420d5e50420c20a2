using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>The tune as the prices hear it. It is given, so what a stroke costs with it depends on that stroke alone.</summary>
internal sealed class TuneInTime
{
    private readonly Instrument _instrument;
    private readonly Sound _sound;
    private readonly Items<TuneStroke> _strokes;
    private readonly TuneHome _home;
    private readonly StrokeKind[] _kinds;

    public TuneInTime(Instrument instrument, Sound sound, PlacedTune? tune)
    {
        _instrument = instrument;
        _sound = sound;
        _strokes = tune?.Strokes ?? [];
        _home = tune?.Layout == TuneLayout.Below ? instrument.Tower.HomeBelow : instrument.Tower.Home;
        _kinds = [.. _strokes.Select(s => new StrokeKind(instrument.BellAt(s.Note), s.Limb, StrokeKinds.Microseconds(s.At)))];
    }

    /// <summary>The roughness of a stroke with every stroke of the tune that rings with it.</summary>
    /// <param name="kind">The stroke, timed from the start of its slot.</param>
    /// <param name="start">When the slot is heard, in microseconds.</param>
    public int Roughness(StrokeKind kind, long start)
    {
        var sum = 0;
        foreach (var tune in Within(start + kind.Offset, _instrument.Horizon))
        {
            sum += _instrument.RoughnessWithTune(kind, tune, start);
        }

        return sum;
    }

    /// <summary>The hurry of a limb between a stroke and those of the tune.</summary>
    /// <param name="kind">The stroke, timed from the start of its slot.</param>
    /// <param name="start">When the slot is heard, in microseconds.</param>
    public int Hurry(StrokeKind kind, long start)
    {
        var sum = 0;
        foreach (var tune in Within(start + kind.Offset, StrokeKinds.Microseconds(_instrument.Reach.LongestEasyTime)))
        {
            sum += _instrument.Hurry(kind, tune, start);
        }

        return sum;
    }

    /// <summary>What the tune's own strokes in a stretch add to what carries there: energy, and its moment for brightness.</summary>
    public (double Energy, double Moment) Heard(Seconds from, Seconds to)
    {
        var (energy, moment) = (0.0, 0.0);
        for (var i = FirstFrom(StrokeKinds.Microseconds(from) - 2); i < _kinds.Length && _strokes[i].At < to; i++)
        {
            if (_strokes[i].At.Value >= from.Value - 1e-6)
            {
                var power = Math.Pow(_sound.TuneTouch.AmplitudeFactor, 2);
                var rest = to - _strokes[i].At;
                energy += power * _instrument.Carry.CarryEnergy(_kinds[i].Bell, Seconds.Zero, rest);
                moment += power * _instrument.Carry.LogFrequency(_kinds[i].Bell, Seconds.Zero, rest);
            }
        }

        return (energy, moment);
    }

    /// <summary>What the tune costs for lying outside its home on the tower.</summary>
    public long OutsideHome() => _strokes.Sum(s => (long)Thousandths.Of(_sound.Home * _home.Outside(s.Note) * (s.Until - s.At).Value));

    /// <summary>
    /// What the tune costs with itself: roughness of its strokes and what they contradict. No voicing changes it, but
    /// another octave does.
    /// </summary>
    public long Own(ChordsInTime chords)
    {
        var sum = 0L;
        for (var i = 0; i < _kinds.Length; i++)
        {
            var power = Math.Pow(_sound.TuneTouch.AmplitudeFactor, 2);
            sum += Thousandths.Of(_sound.Clash * power * chords.ContradictionFrom(_instrument.Doses, _kinds[i].Bell, _strokes[i].At));
            for (var j = i + 1; j < _kinds.Length && _kinds[j].Offset - _kinds[i].Offset < _instrument.Horizon; j++)
            {
                sum += _instrument.RoughnessInTune(_kinds[i], _kinds[j]);
            }
        }

        return sum;
    }

    // The strokes of the tune around a time.
    private ReadOnlySpan<StrokeKind> Within(long at, long reach)
    {
        var first = FirstFrom(at - reach);
        return _kinds.AsSpan(first, FirstFrom(at + reach) - first);
    }

    private int FirstFrom(long at)
    {
        var (low, high) = (0, _kinds.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _kinds[middle].Offset < at ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
