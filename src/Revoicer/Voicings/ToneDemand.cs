using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Which tones a candidate must sound: the guide tones, as far as the limbs hold them, the slash bass unless the tune is the bass, and in slots of a
/// second and more three different tones of the chord, or two besides those of the tune. What the tune sounds is left to it.
/// </summary>
internal sealed class ToneDemand
{
    // A bass and three tones in the hands hold the root and three guide tones; a symbol that names more has its third and
    // seventh first, then the alterations in its order.
    private const int GuideTones = 3;
    private const int DifferentTones = 3;
    private const int TonesBesideTune = 2;

    private static readonly Seconds FullChordFrom = new(1);

    private readonly int _required;
    private readonly int _tonesAtLeast;
    private readonly int _chord;

    public ToneDemand(Slot slot, PitchClassSet onTower)
    {
        var byTune = slot.TuneTones;
        var guides = slot.Symbol.Tones.Where(t => t.Role == ToneRole.Guide)
            .OrderBy(t => t.Degree.Number is 3 or 4 or 2 ? 0 : t.Degree.Number == 7 ? 1 : 2)
            .Take(GuideTones)
            .Select(t => t.PitchClass);
        _required = PitchClassSet.Of(slot.Symbol.Bass is { } bass && !slot.IsQuick && !slot.HasTuneBelow ? guides.Append(bass.PitchClass) : guides).Mask & ~byTune.Mask & onTower.Mask;
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

        return (upper.Count == 0 || (mask & _required) == _required)
            && int.PopCount(mask & _chord) >= _tonesAtLeast;
    }

    private static int Bit(WrittenNote? note) => note is { } n ? 1 << n.PitchClass.Value : 0;
}
