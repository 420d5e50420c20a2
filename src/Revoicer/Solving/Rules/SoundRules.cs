using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>The rules under a sound setting. A new rule is a new file and a line here.</summary>
public static class SoundRules
{
    /// <summary>The rules, those on single slots first.</summary>
    public static Items<Rule> Of(Sound sound) =>
        [
            new RootLowest(),
            new RollsPerPhrase(sound.RollsPerPhrase),
            new ApproachesPerPhrase(sound.ApproachesPerPhrase),
            new BassOnStrongBeats(sound.StrongBeatsWithBass),
            .. sound.CarryAtLeast.Value > Sound.AnyCarry.Value ? [new CarryAtLeast(sound.CarryAtLeast)] : Array.Empty<Rule>(),
            .. Figures.All.Where(row => row.IsManner && sound.OneFigure < 1).Select(row => new OneFigure(row.Figure, sound.OneFigure)),
        ];
}
