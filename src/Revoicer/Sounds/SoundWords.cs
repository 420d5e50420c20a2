using Revoicer.Values;

namespace Revoicer.Sounds;

/// <summary>The words of a sound file, part by part, each with its range, its meaning and its place in a sound. A new word is a row here, a property of <see cref="Sound"/> and a line in the shipped files.</summary>
internal static class SoundWords
{
    private const string Units = "clash units";
    private const string Semitone = "clash units a semitone";
    private const string Decibel = "clash units a dB";

    // A price above this is no trade-off any more; a rule says it better.
    private const double HighestPrice = 1000;

    /// <summary>Every word, in the order in which the shipped files have them.</summary>
    public static readonly SoundWord[] All =
    [
        Price("clash", "weight", "a factor", s => s.Clash, (s, v) => s with { Clash = v }, "on roughness and contradiction of all that rings"),
        Number("clash", "fade", 0, 60, "s", s => s.Fade?.Value ?? 0, (s, v) => s with { Fade = v > 0 ? new Seconds(v) : null }, "how fast attention leaves a stroke (time constant); 0 for none, which is the bare physics"),
        Price("tones", "root", Units, s => s.MissingRoot, (s, v) => s with { MissingRoot = v }, "leaving out the root"),
        Price("tones", "third", Units, s => s.MissingThird, (s, v) => s with { MissingThird = v }, "leaving out the third, or the tone suspended in its place"),
        Price("tones", "seventh", Units, s => s.MissingSeventh, (s, v) => s with { MissingSeventh = v }, "leaving out the seventh, or an altered tone that the symbol names"),
        Price("tones", "fifth", Units, s => s.MissingFifth, (s, v) => s with { MissingFifth = v }, "leaving out the fifth"),
        Price("tones", "colour", Units, s => s.MissingColour, (s, v) => s with { MissingColour = v }, "leaving out a sixth, ninth, eleventh or thirteenth"),
        Price("tones", "low-third", Units, s => s.LowThird, (s, v) => s with { LowThird = v }, "the third less than a tenth over a bass below written middle C"),
        Price("tones", "doubled", Units, s => s.Doubled, (s, v) => s with { Doubled = v }, "striking a tone on a second bell"),
        Number("tones", "bells", 1, 6, "bells", s => s.FullChord, (s, v) => s with { FullChord = v }, "in a full chord, the tune not counted"),
        Price("tones", "thin", "clash units a bell", s => s.Thin, (s, v) => s with { Thin = v }, "fewer than a full chord has, where it lasts 0.8 s and more"),
        Price("tones", "bare-hands", Units, s => s.BareHands, (s, v) => s with { BareHands = v }, "nothing in the hands under a chord that lasts 0.8 s and more"),
        Price("bass", "third", Units, s => s.ThirdInBass, (s, v) => s with { ThirdInBass = v }, "on a strong beat, the third in the bass where the symbol asks for another bass"),
        Price("bass", "other", Units, s => s.OtherBass, (s, v) => s with { OtherBass = v }, "on a strong beat, the fifth or seventh in the bass where the symbol asks for another"),
        Price("bass", "weak-beat", Units, s => s.WeakBeatBass, (s, v) => s with { WeakBeatBass = v }, "on a weak beat, or reached by step, another bass than the symbol's"),
        Price("bass", "none", Units, s => s.NoBass, (s, v) => s with { NoBass = v }, "no bass bell under a new chord; a tenth of it where the chord goes on"),
        Price("bass", "height", Semitone, s => s.BassHeight, (s, v) => s with { BassHeight = v }, "the bass bell above the lowest pedal"),
        Price("bass", "deep", Semitone, s => s.DeepBass, (s, v) => s with { DeepBass = v }, "the bass bell below written middle C; at cadences and the last chord above the lowest pedal"),
        Price("bass", "leap", Semitone, s => s.BassLeap, (s, v) => s with { BassLeap = v }, "a leap of the bass beyond a fifth"),
        Price("bass", "step", Units, s => s.BassStep, (s, v) => s with { BassStep = v }, "two basses whose symbols lie one or two semitones apart, where the bells do not"),
        Price("bass", "again", Units, s => s.BassAgain, (s, v) => s with { BassAgain = v }, "the bass bell of the chord before struck again where the chord goes on"),
        Price("bass", "approach", Units, s => s.Approach, (s, v) => s with { Approach = v }, "what it is worth that a tone leads by step into the next bass, where that is a leap away in the same phrase"),
        Whole("bass", "approaches-in-phrase", 0, 99, "tones", s => s.ApproachesPerPhrase, (s, v) => s with { ApproachesPerPhrase = (int)v }, "that lead into the next bass, in a phrase at most"),
        Number("bass", "strong-beats", 0, 1, "a share", s => s.StrongBeatsWithBass, (s, v) => s with { StrongBeatsWithBass = v }, "of the new chords on strong beats in every phrase, the least that has a bass bell"),
        Price("figures", "roll-forgone", Units, s => s.RollForgone, (s, v) => s with { RollForgone = v }, "not rolling where a phrase begins or on the last chord; a quarter of it on three and more bells over 1.5 s"),
        Price("figures", "rolled", Units, s => s.Rolled, (s, v) => s with { Rolled = v }, "a roll anywhere else"),
        Price("figures", "bass-first", Units, s => s.BassFirst, (s, v) => s with { BassFirst = v }, "the bass first and the rest a beat later"),
        Price("figures", "afterbeats", Units, s => s.Afterbeats, (s, v) => s with { Afterbeats = v }, "the bass on the strong beat and the hands on the weak beats that follow"),
        Price("figures", "broken", Units, s => s.Broken, (s, v) => s with { Broken = v }, "one bell after another"),
        Price("figures", "in-tenths", Units, s => s.InTenths, (s, v) => s with { InTenths = v }, "the bass moving with the tune a tenth or a seventeenth below it"),
        Price("figures", "change", Units, s => s.FigureChange, (s, v) => s with { FigureChange = v }, "another figure than that of the chord before in the same phrase; struck together and rolled count as one"),
        Whole("figures", "rolls-in-phrase", 0, 99, "rolls", s => s.RollsPerPhrase, (s, v) => s with { RollsPerPhrase = (int)v }, "in a phrase at most, besides that of the last chord"),
        Number("figures", "one-figure", 0.3, 1, "a share", s => s.OneFigure, (s, v) => s with { OneFigure = v }, "of the chords of a phrase of four and more, the largest that one figure may have"),
        Number("figures", "roll-step", 0.04, 0.09, "s", s => s.RollStep.Value, (s, v) => s with { RollStep = new Seconds(v) }, "from one stroke of a roll to the next"),
        Number("touch", "tune", -12, 12, "dB", s => s.TuneTouch.Value, (s, v) => s with { TuneTouch = new Decibels(v) }, "how much stronger the tune is struck"),
        Number("touch", "heavy", -12, 12, "dB", s => s.HeavyTouch.Value, (s, v) => s with { HeavyTouch = new Decibels(v) }, "how bells below written middle C are struck against the rest"),
        Number("carry", "target", -60, 60, "dB", s => s.CarryTarget.Value, (s, v) => s with { CarryTarget = new Decibels(v) }, "how far a chord should carry, beside one stroke of C4 as heard over the same time"),
        Price("carry", "shortfall", Decibel, s => s.CarryShortfall, (s, v) => s with { CarryShortfall = v }, "below that target"),
        Number("carry", "at-least", -60, 60, "dB", s => s.CarryAtLeast.Value, (s, v) => s with { CarryAtLeast = new Decibels(v) }, "how far every chord of 0.8 s and more carries at least, or as far as any of its voicings does; -60 asks nothing"),
        Number("brightness", "target", 20, 20000, "Hz", s => s.BrightnessTarget.Value, (s, v) => s with { BrightnessTarget = new Hertz(v) }, "the pitch that a chord's sounding energy should reach"),
        Price("brightness", "shortfall", Semitone, s => s.BrightnessShortfall, (s, v) => s with { BrightnessShortfall = v }, "below that target"),
        Price("lines", "voice-leading", Semitone, s => s.VoiceLeading, (s, v) => s with { VoiceLeading = v }, "by which the tones in the hands move from chord to chord"),
        Price("lines", "gap", Semitone, s => s.Gap, (s, v) => s with { Gap = v }, "beyond a twelfth between the bass and the tone above it, twice as much beyond two octaves"),
        Price("lines", "tendency", "clash units a tone", s => s.Tendency, (s, v) => s with { Tendency = v }, "in the hands that leads on and does not go where it leads: leading tone, seventh, suspended fourth"),
        Price("lines", "number", "clash units a tone", s => s.NumberOfTones, (s, v) => s with { NumberOfTones = v }, "beyond one by which the number of tones in the hands changes within a phrase"),
        Price("lines", "top-leap", Semitone, s => s.TopLeap, (s, v) => s with { TopLeap = v }, "of a leap beyond a fifth in the highest tone, where there is no tune"),
        Price("lines", "top-again", Units, s => s.TopAgain, (s, v) => s with { TopAgain = v }, "the highest tone of the chord before struck again, where there is no tune"),
        Price("tune", "home", "clash units a semitone and second", s => s.Home, (s, v) => s with { Home = v }, "of the tune outside its home on the tower; a tenth of it for the highest tone where there is no tune"),
        Price("tune", "near", Semitone, s => s.NearTune, (s, v) => s with { NearTune = v }, "by which a stroke comes closer than a sixth under a held note of the tune"),
        Price("tune", "drowned", Decibel, s => s.Drowned, (s, v) => s with { Drowned = v }, "by which a stroke of the tune lies more than 6 dB under what is struck with it"),
        Price("effort", "weight", "a factor", s => s.Effort, (s, v) => s with { Effort = v }, "on the effort of hands and feet"),
    ];

    private static SoundWord Price(string part, string word, string unit, Func<Sound, double> value, Func<Sound, double, Sound> with, string meaning) =>
        Number(part, word, 0, HighestPrice, unit, value, with, meaning);

    private static SoundWord Number(
        string part, string word, double lowest, double highest, string unit, Func<Sound, double> value, Func<Sound, double, Sound> with, string meaning) =>
        new(part, word, lowest, highest, IsWhole: false, unit, value, with, meaning);

    private static SoundWord Whole(
        string part, string word, double lowest, double highest, string unit, Func<Sound, double> value, Func<Sound, double, Sound> with, string meaning) =>
        new(part, word, lowest, highest, IsWhole: true, unit, value, with, meaning);
}

/// <summary>One word of a sound file.</summary>
/// <param name="Part">The heading under which it stands.</param>
/// <param name="Word">The word.</param>
/// <param name="Lowest">The lowest number it may have.</param>
/// <param name="Highest">The highest.</param>
/// <param name="IsWhole">Whether only whole numbers are taken.</param>
/// <param name="Unit">What the number counts.</param>
/// <param name="Value">Where a sound keeps the number.</param>
/// <param name="With">A sound with another number there.</param>
/// <param name="Meaning">What it prices or sets, read after number and unit.</param>
internal sealed record SoundWord(
    string Part,
    string Word,
    double Lowest,
    double Highest,
    bool IsWhole,
    string Unit,
    Func<Sound, double> Value,
    Func<Sound, double, Sound> With,
    string Meaning)
{
    /// <summary>The unit as a message writes it after a range; a price has none there, being one of many.</summary>
    public string RangeUnit => Unit is "s" or "dB" or "Hz" ? $" {Unit}" : "";
}
