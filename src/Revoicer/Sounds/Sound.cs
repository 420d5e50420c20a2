using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Sounds;

/// <summary>
/// What the player asks of the sound: weights, targets and floors. All prices are in clash units: 100 is C4 E4 G4 struck
/// together and left to die away.
/// </summary>
public sealed record Sound
{
    /// <summary>The least carry that asks nothing: silence counts as more.</summary>
    public static Decibels AnyCarry { get; } = new(-60);

    /// <summary>Sounds come from <see cref="SoundFile"/> and <see cref="ShippedSounds"/>; a change of one is made by 'with'.</summary>
    internal Sound()
    {
    }

    /// <summary>The name in its file.</summary>
    public required string Name { get; init; }

    /// <summary>How fast attention leaves a stroke (time constant); null for the bare physics. An estimate.</summary>
    public Seconds? Fade { get; init; }

    /// <summary>Factor on the clash dose, roughness and contradiction alike.</summary>
    public double Clash { get; init; }

    /// <summary>Leaving out the root.</summary>
    public double MissingRoot { get; init; }

    /// <summary>Leaving out the third, or the tone suspended in its place.</summary>
    public double MissingThird { get; init; }

    /// <summary>Leaving out the seventh or an altered tone that the symbol names.</summary>
    public double MissingSeventh { get; init; }

    /// <summary>Leaving out the fifth.</summary>
    public double MissingFifth { get; init; }

    /// <summary>Leaving out a sixth, ninth, eleventh or thirteenth.</summary>
    public double MissingColour { get; init; }

    /// <summary>How many bells a full chord has, the tune not counted; 1 to 6.</summary>
    public double FullChord { get; init; }

    /// <summary>Each bell fewer than a full chord has in a slot of 0.8 s and more.</summary>
    public double Thin { get; init; }

    /// <summary>A chord of 0.8 s and more without a tone in the hands.</summary>
    public double BareHands { get; init; }

    /// <summary>The third of the chord less than a tenth over a bass below written middle C.</summary>
    public double LowThird { get; init; }

    /// <summary>A chord tone struck on a second bell.</summary>
    public double Doubled { get; init; }

    /// <summary>On a strong beat, the third in the bass of a symbol that asks for another bass.</summary>
    public double ThirdInBass { get; init; }

    /// <summary>On a strong beat, fifth or seventh in the bass of a symbol that asks for another bass.</summary>
    public double OtherBass { get; init; }

    /// <summary>On a weak beat, any bass but the one the symbol asks for.</summary>
    public double WeakBeatBass { get; init; }

    /// <summary>A new chord without a bass bell; a tenth of it where the chord goes on.</summary>
    public double NoBass { get; init; }

    /// <summary>For each semitone by which the bass bell lies above the lowest pedal.</summary>
    public double BassHeight { get; init; }

    /// <summary>A chord not rolled where a phrase begins or on the last chord; a quarter of it on three and more bells over 1.5 s.</summary>
    public double RollForgone { get; init; }

    /// <summary>A roll anywhere else.</summary>
    public double Rolled { get; init; }

    /// <summary>The bass first and the rest a beat later.</summary>
    public double BassFirst { get; init; }

    /// <summary>The bass on the strong beat, the hands on the weak beats that follow.</summary>
    public double Afterbeats { get; init; }

    /// <summary>One tone after another.</summary>
    public double Broken { get; init; }

    /// <summary>The bass moving with the tune a tenth or a seventeenth below it.</summary>
    public double InTenths { get; init; }

    /// <summary>Another figure than the slot before within one phrase.</summary>
    public double FigureChange { get; init; }

    /// <summary>From one stroke of a roll to the next; 40 to 90 ms.</summary>
    public Seconds RollStep { get; init; }

    /// <summary>How much stronger the tune is struck than the rest.</summary>
    public Decibels TuneTouch { get; init; }

    /// <summary>How the heavy bells, below written middle C, are struck against the rest; negative for softer.</summary>
    public Decibels HeavyTouch { get; init; }

    /// <summary>How far a slot should carry, re one stroke of C4 over the same time.</summary>
    public Decibels CarryTarget { get; init; }

    /// <summary>How far every chord of 0.8 s and more carries at least, or as far as any of its voicings does: a rule; <see cref="AnyCarry"/> asks nothing.</summary>
    public Decibels CarryAtLeast { get; init; }

    /// <summary>For each decibel that is wanting.</summary>
    public double CarryShortfall { get; init; }

    /// <summary>The pitch that a slot's sounding energy should reach.</summary>
    public Hertz BrightnessTarget { get; init; }

    /// <summary>For each semitone that is wanting.</summary>
    public double BrightnessShortfall { get; init; }

    /// <summary>For each semitone that the tones above the bass move, in the shortest way.</summary>
    public double VoiceLeading { get; init; }

    /// <summary>For each semitone beyond a twelfth between the bass and the tone above it, and as much again for each beyond two octaves.</summary>
    public double Gap { get; init; }

    /// <summary>For each semitone by which the bass bell lies below written middle C, the first chord left out; at cadences and the last chord above the lowest pedal.</summary>
    public double DeepBass { get; init; }

    /// <summary>For each semitone by which the bass leaps further than a fifth.</summary>
    public double BassLeap { get; init; }

    /// <summary>Two basses whose symbols lie one or two semitones apart, where the bells do not; a leading tone in the bass that does not rise.</summary>
    public double BassStep { get; init; }

    /// <summary>The bass bell of the slot before struck again under the same chord.</summary>
    public double BassAgain { get; init; }

    /// <summary>What it is worth that a tone leads by step into the next bass, where that is a leap away in the same phrase.</summary>
    public double Approach { get; init; }

    /// <summary>How many such tones a phrase may have.</summary>
    public int ApproachesPerPhrase { get; init; }

    /// <summary>A tone in the hands that leads on, such as a leading tone or a seventh, and does not go where it leads.</summary>
    public double Tendency { get; init; }

    /// <summary>For each tone, beyond one, by which the number of tones in the hands changes within a phrase.</summary>
    public double NumberOfTones { get; init; }

    /// <summary>Without a tune, for each semitone by which the highest tone leaps further than a fifth.</summary>
    public double TopLeap { get; init; }

    /// <summary>Without a tune, the highest tone of the chord before again.</summary>
    public double TopAgain { get; init; }

    /// <summary>
    /// For each semitone by which a note of the tune lies outside its home, times the seconds it lasts; a tenth of it for the
    /// highest tone in the hands where there is no tune.
    /// </summary>
    public double Home { get; init; }

    /// <summary>For each semitone by which a stroke comes closer than a sixth under a note of the tune that is held.</summary>
    public double NearTune { get; init; }

    /// <summary>For each decibel by which a stroke of the tune lies further than 6 dB under what is struck with it.</summary>
    public double Drowned { get; init; }

    /// <summary>Factor on the effort of hands and feet.</summary>
    public double Effort { get; init; }

    /// <summary>Share of the slots with a new chord on a strong beat that have a bass bell, in every phrase; 0..1.</summary>
    public double StrongBeatsWithBass { get; init; }

    /// <summary>How many rolls a phrase may have.</summary>
    public int RollsPerPhrase { get; init; }

    /// <summary>The largest share of the chords of a phrase, of four and more, that one figure may have; 0..1, where 1 lets it have all.</summary>
    public double OneFigure { get; init; }
}
