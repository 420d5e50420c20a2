using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>What the tones of a chord cost that a voicing leaves out and neither the tune nor the chord before sounds, in thousandths.</summary>
internal sealed class MissingTones(Sound sound, Slot slot)
{
    private readonly PitchClassSet _tuneTones = slot.TuneTones;

    /// <summary>The price of a voicing.</summary>
    /// <param name="voicing">The voicing.</param>
    /// <param name="ringing">Tones that ring on from the chord before.</param>
    public int Price(Voicing voicing, PitchClassSet ringing)
    {
        var sounded = voicing.PitchClasses;
        var price = 0;
        foreach (var tone in slot.Symbol.Tones.AsSpan())
        {
            price += sounded.Contains(tone.PitchClass) || _tuneTones.Contains(tone.PitchClass) || ringing.Contains(tone.PitchClass) || IsExcused(tone, voicing)
                ? 0
                : Thousandths.Of(PriceOfMissing(tone));
        }

        return price + (LacksSlashBass(sounded) ? Thousandths.Of(sound.MissingRoot) : 0);
    }

    /// <summary>The price of tones that are no root and no bass.</summary>
    public int Price(PitchClassSet tones) =>
        slot.Symbol.Tones.Sum(tone => tones.Contains(tone.PitchClass) ? Thousandths.Of(PriceOfMissing(tone)) : 0);

    // Where the slash bass is no tone of the chord above it, and there is a bass to ask for.
    private bool LacksSlashBass(PitchClassSet sounded) =>
        slot.Symbol.Bass is { } bass
        && !slot.IsPassing
        && !slot.HasTuneBelow
        && !sounded.Contains(bass.PitchClass)
        && slot.Symbol.Tones.All(t => t.PitchClass != bass.PitchClass);

    // On a quick chord the bass may ring through, and over a slash bass the hands have more telling tones to take.
    private bool IsExcused(ChordTone tone, Voicing voicing) =>
        tone.Role == ToneRole.Root && (slot.IsPassing || (slot.Symbol.Bass is not null && voicing.Upper.Count > 0));

    private double PriceOfMissing(ChordTone tone) => tone switch
    {
        { Role: ToneRole.Root } => sound.MissingRoot,
        { Role: ToneRole.Guide, Degree.Number: 2 or 3 or 4 } => sound.MissingThird,
        { Role: ToneRole.Guide } => sound.MissingSeventh,
        { Degree.Number: 5 } => sound.MissingFifth,
        _ => sound.MissingColour,
    };
}
