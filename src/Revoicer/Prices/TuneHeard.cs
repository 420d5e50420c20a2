using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>How well the tune is heard over the strokes of one slot: what moves close under a held note, and what drowns a stroke.</summary>
internal sealed class TuneHeard
{
    /// <summary>A stroke of the tune may be so much softer than what is struck with it and just after it. Estimate.</summary>
    public static readonly Decibels Floor = new(6);

    // The ear weighs a beginning by about its first quarter of a second. Estimate.
    private static readonly Seconds Beginning = new(0.25);

    // From a sixth below on a stroke is heard as a voice of its own. Common practice.
    private const int Sixth = 8;
    private const double Rounding = 1e-6;

    private readonly Sound _sound;
    private readonly StrokeKinds _kinds;
    private readonly int[] _near;
    private readonly double[] _energy;
    private readonly (double At, double Energy)[] _tune;

    public TuneHeard(Instrument instrument, Sound sound, Slot slot, StrokeKinds kinds)
    {
        (_sound, _kinds) = (sound, kinds);
        Items<NearStroke> tune = slot.Tunes.Count == 0 ? [] : slot.Tunes[0];
        _near = new int[kinds.Count];
        _energy = new double[kinds.Count];
        for (var k = 0; k < kinds.Count && tune.Count > 0; k++)
        {
            var note = instrument.Tower.Bells[kinds[k].Bell].Note;
            _energy[k] = Energy(kinds[k].Bell, instrument.TouchOf(note));
            _near[k] = slot.HasTuneBelow || kinds[k].Offset < 0 ? 0 : Thousandths.Of(sound.NearTune * Close(note, kinds[k].Offset * 1e-6, tune, instrument.Reach.AtOnce.Value));
        }

        _tune = [.. tune
            .Where(s => s.After.Value >= -Rounding && s.After.Value < slot.Duration.Value - Rounding)
            .Select(s => (s.After.Value, Energy(instrument.BellAt(s.Note), sound.TuneTouch)))];

        double Energy(int bell, Decibels touch) => Math.Pow(touch.AmplitudeFactor, 2) * instrument.Carry.CarryEnergy(bell, Seconds.Zero, Beginning);
    }

    /// <summary>The price of strokes that move close under a note of the tune while it is held.</summary>
    public int Near(ReadOnlySpan<int> kinds)
    {
        var sum = 0;
        foreach (var kind in kinds)
        {
            sum += _near[kind];
        }

        return sum;
    }

    /// <summary>The price of what the tune's strokes lack in level beside a candidate's.</summary>
    public int Drowned(ReadOnlySpan<int> kinds)
    {
        var lacking = 0.0;
        foreach (var (at, energy) in _tune)
        {
            lacking += Math.Max(0, Under(at, energy, kinds) - Floor.Value);
        }

        return Thousandths.Of(_sound.Drowned * lacking);
    }

    /// <summary>By how much each stroke of the tune lies under what a candidate strikes with it, where it lies under it; in dB.</summary>
    public IEnumerable<(Seconds After, Decibels Under)> Levels(int candidate)
    {
        foreach (var (at, energy) in _tune)
        {
            yield return (new Seconds(at), new Decibels(Under(at, energy, _kinds.Of(candidate))));
        }
    }

    // In dB; minus infinity where nothing is struck.
    private double Under(double at, double energy, ReadOnlySpan<int> kinds)
    {
        var other = 0.0;
        foreach (var kind in kinds)
        {
            var after = (_kinds[kind].Offset * 1e-6) - at;
            other += after > -Rounding * 2 && after < Beginning.Value ? _energy[kind] : 0;
        }

        return 10 * Math.Log10(other / energy);
    }

    // Semitones by which a stroke that does not go with the tune comes closer than a sixth to the note that is held then.
    private static int Close(WrittenNote note, double at, Items<NearStroke> tune, double atOnce)
    {
        NearStroke? held = null;
        foreach (var stroke in tune)
        {
            if (stroke.After.Value <= at + Rounding)
            {
                held = stroke;
            }
        }

        return held is null || at - held.After.Value < atOnce || held.Until.Value <= at + Rounding || held.Note < note
            ? 0
            : Math.Max(0, Sixth - (held.Note - note).Semitones);
    }
}
