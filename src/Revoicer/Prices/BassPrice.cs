using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>What the bass of a voicing costs in one slot: none at all, another than the symbol's, and where on the pedals it lies.</summary>
internal sealed class BassPrice
{
    // Where a chord goes on its bass rings on, so a tenth of what a new chord would pay for none. Estimate.
    private const double HeldChord = 10;

    // Written middle C: the upper pedals lie from here up. Estimate.
    private const int DeepBelow = 60;

    private readonly Tower _tower;
    private readonly Sound _sound;
    private readonly Slot _slot;

    // Hearings after nothing, or after the slot itself, whose bass does not move; what comes after another slot is priced
    // with that slot.
    private readonly int _hearingsNotByStep;
    private readonly int _newChords;

    public BassPrice(Tower tower, Sound sound, Slot slot, ChordsInTime chords)
    {
        (_tower, _sound, _slot) = (tower, sound, slot);
        HearingsAfterItself = slot.Hearings.Count(h => chords.HasBefore(h) && slot.Hearings.Any(before => before.Order == h.Order - 1));
        _hearingsNotByStep = slot.Hearings.Count(h => !chords.HasBefore(h)) + HearingsAfterItself;
        _newChords = slot.Hearings.Count(h => h.IsNewChord);
    }

    /// <summary>How often the slot is heard right after itself.</summary>
    public int HearingsAfterItself { get; }

    /// <summary>The price over all hearings. Where the tune lies below it is the bass, and given.</summary>
    public int Of(Voicing voicing)
    {
        if (_slot.HasTuneBelow)
        {
            return 0;
        }

        var other = Other(voicing) is { } price ? Math.Min(price, _sound.WeakBeatBass) : 0;
        var place = voicing.Bass is { } bass ? Place(bass) : (double?)null;
        var again = place is not null && voicing.MovingBass.Count == 0 ? Thousandths.Of(_sound.BassAgain) : 0;
        return (_newChords * Thousandths.Of((place ?? _sound.NoBass) + other))
            + ((_slot.Hearings.Count - _newChords) * Thousandths.Of((place ?? (_sound.NoBass / HeldChord)) + other))
            + (HearingsAfterItself * again)
            + (_hearingsNotByStep * NotByStep(voicing));
    }

    /// <summary>What a bass other than the symbol's costs more where it is not reached by step, for each hearing.</summary>
    public int NotByStep(Voicing voicing) => _slot.IsStrong && !_slot.HasTuneBelow && Other(voicing) is { } price
        ? Thousandths.Of(Math.Max(0, price - _sound.WeakBeatBass))
        : 0;

    // Deep bells are kept for ends, and wanted there; the first chord may have one. Common practice.
    private double Place(WrittenNote bass)
    {
        var height = (bass - _tower.PedalsFrom).Semitones;
        var deep = _slot.IsCadence || _slot.IsLast ? height
            : _slot.IsFirst ? 0
            : Math.Max(0, DeepBelow - bass.Midi);
        return (_sound.BassHeight * height) + (_sound.DeepBass * deep);
    }

    // The price of another lowest bell than the symbol's on a strong beat; null where it has that bell or none.
    private double? Other(Voicing voicing)
    {
        if (voicing.Lowest is not { } lowest || lowest.PitchClass == _slot.Symbol.Lowest.PitchClass || (_slot.IsPassing && voicing.Bass is null))
        {
            return null;
        }

        return lowest.PitchClass == _slot.Symbol.Third ? _sound.ThirdInBass : _sound.OtherBass;
    }
}
