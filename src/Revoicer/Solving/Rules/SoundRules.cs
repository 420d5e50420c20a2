using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Solving.Rules;

/// <summary>The rules under a sound setting. A new rule is a new file and a line here.</summary>
public static class SoundRules
{
    /// <summary>The rules, those on single slots first.</summary>
    public static Items<Rule> Of(Sound sound) =>
        [new RootLowest(), new RollsPerPhrase(sound.RollsPerPhrase), new BassOnStrongBeats(sound.StrongBeatsWithBass)];
}
