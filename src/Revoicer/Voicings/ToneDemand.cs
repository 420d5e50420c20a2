using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Which tones a candidate must sound: the guide tones, as far as the limbs hold them, the slash bass unless the tune is the bass, and in slots of a
/// second and more three different tones of the chord, or two besides those of the tune. What the tune sounds is left to it, and
/// tones that may ring on from the chord before to that (<see cref="Slot.LeftRinging"/>).
/// </summary>
internal sealed class ToneDemand
{
    // A bass and three tones in the hands hold the root and three guide tones; a symbol that names more has its third and
    // seventh first, then the alterations in its order.
    private const int GuideTones = 3;
    private const int DifferentTones = 3;
    private const int TonesBesideTune = 2;

    private static readonly Seconds FullChordFrom = new(1);

    private readonly Slot _slot;
    private readonly int _required;
    private readonly int _tonesAtLeast;
    private readonly int _chord;

    private ToneDemand(Slot slot, PitchClassSet onTower)
    {
        _slot = slot;
        var byTune = slot.TuneTones;
        var guides = slot.Symbol.Tones.Where(t => t.Role == ToneRole.Guide)
            .OrderBy(t => t.Degree.Number is 3 or 4 or 2 ? 0 : t.Degree.Number == 7 ? 1 : 2)
            .Take(GuideTones)
            .Select(t => t.PitchClass);
        _required = PitchClassSet.Of(slot.Symbol.Bass is { } bass && !slot.IsPassing && !slot.HasTuneBelow ? guides.Append(bass.PitchClass) : guides).Mask & ~byTune.Mask & onTower.Mask;
        _chord = slot.Symbol.PitchClasses.Mask & ~byTune.Mask & onTower.Mask;
        var asked = slot.Tunes.Count > 0 ? TonesBesideTune : DifferentTones;
        _tonesAtLeast = slot.Duration >= FullChordFrom ? Math.Min(asked, int.PopCount(_chord)) : 0;
    }

    /// <summary>Whether feet and hands together sound what is asked; feet alone sound no guide tones and need not.</summary>
    /// <param name="bass">The lower or only pedal.</param>
    /// <param name="second">The other pedal.</param>
    /// <param name="upper">What the hands take.</param>
    /// <param name="later">Tones that the bass comes to besides.</param>
    public bool IsMet(WrittenNote? bass, WrittenNote? second, Items<Baton> upper, PitchClassSet later = default)
    {
        var mask = Bit(bass) | Bit(second) | later.Mask;
        foreach (var baton in upper.AsSpan())
        {
            mask |= Bit(baton.Note);
        }

        var bells = (bass is null ? 0 : 1) + (second is null ? 0 : 1) + later.Count + upper.Count;
        mask |= upper.Count > 0 && int.PopCount(mask) == bells ? _slot.Shared.Mask : 0;
        return (upper.Count == 0 || (mask & _required) == _required)
            && int.PopCount(mask & _chord) >= _tonesAtLeast;
    }

    /// <summary>What is asked of a slot on a tower.</summary>
    public static ToneDemand On(Tower tower, Slot slot) => new(slot, PitchClassSet.Of(tower.Bells.Select(b => b.Note.PitchClass)));

    private ToneDemand(ToneDemand other, int required, int tonesAtLeast)
    {
        (_slot, _chord) = (other._slot, other._chord);
        (_required, _tonesAtLeast) = (required, tonesAtLeast);
    }

    /// <summary>The same with less and less asked for, down to one tone: first the guide tones yield, then the number of tones.</summary>
    public IEnumerable<ToneDemand> Eased()
    {
        for (var tones = _tonesAtLeast; tones >= 1; tones--)
        {
            yield return new ToneDemand(this, _required, tones);
            yield return new ToneDemand(this, 0, tones);
        }
    }

    /// <summary>Whether a voicing sounds what is asked.</summary>
    public bool IsMet(Voicing voicing) => IsMet(voicing.Bass, voicing.SecondPedal, voicing.Upper, PitchClassSet.Of(voicing.MovingBass.Select(n => n.PitchClass)));

    /// <summary>The tones that a voicing has to sound and does not, as the symbol spells them.</summary>
    public IEnumerable<ChordTone> Missing(Voicing voicing) =>
        _slot.Symbol.Tones.Where(t => (_required & ~voicing.PitchClasses.Mask & (1 << t.PitchClass.Value)) != 0);

    private static int Bit(WrittenNote? note) => note is { } n ? 1 << n.PitchClass.Value : 0;
}
