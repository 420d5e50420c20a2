using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Voicings;

namespace Revoicer.Tests.Oracles;

/// <summary>
/// What is left out of the chords of a piece without a tune, chord by chord as heard, in thousandths: tones that are not struck, and
/// bells short of a full chord. A tone that rings on counts as if it were struck: both chords have it and last at most 1.5 s, the
/// chord before has it in the hands, on a new root it is not the third, this one plays other tones in the hands and none of its own twice.
/// </summary>
internal sealed class TonesLeftOut(Sound sound, (Slot Slot, Hearing Hearing, Candidate Candidate)[] heard)
{
    public long Price() => Enumerable.Range(0, heard.Length).Sum(Price);

    private long Price(int at)
    {
        var (slot, _, candidate) = heard[at];
        PitchClass[] struck = [.. candidate.Strokes.Select(s => s.Note).Distinct().Select(n => n.PitchClass)];
        HashSet<PitchClass> ringing = [];
        if (at > 0 && candidate.Strokes.Any(s => !s.IsPedal) && struck.Distinct().Count() == struck.Length)
        {
            var before = heard[at - 1].Candidate.Strokes.Where(s => !s.IsPedal).Select(s => s.Note.PitchClass);
            ringing = [.. before.Where(tone => MayRingOn(slot, tone) && !struck.Contains(tone))];
        }

        var isPassing = slot.Duration.Value < 0.8 && !slot.IsLast;
        var price = slot.Symbol.Tones.Where(t => !struck.Contains(t.PitchClass) && !ringing.Contains(t.PitchClass)).Sum(t => t switch
        {
            { Role: ToneRole.Root } when isPassing || (slot.Symbol.Bass is not null && candidate.Strokes.Any(s => !s.IsPedal)) => 0,
            { Role: ToneRole.Root } => Rounded(sound.MissingRoot),
            { Role: ToneRole.Guide, Degree.Number: <= 4 } => Rounded(sound.MissingThird),
            { Role: ToneRole.Guide } => Rounded(sound.MissingSeventh),
            { Degree.Number: 5 } => Rounded(sound.MissingFifth),
            _ => Rounded(sound.MissingColour),
        });
        var bells = struck.Length + ringing.Count;
        return price + (isPassing ? 0 : Rounded(sound.Thin * Math.Max(0, sound.FullChord - bells)));
    }

    // At every hearing of the slot.
    private bool MayRingOn(Slot slot, PitchClass tone) => Enumerable.Range(0, heard.Length).Where(i => heard[i].Slot.Index == slot.Index).All(i =>
    {
        if (i == 0 || slot.BeginsPhrase || slot.IsCadence || slot.IsLast || tone == slot.Symbol.Root.PitchClass || tone == slot.Symbol.Lowest.PitchClass)
        {
            return false;
        }

        var (before, when, _) = heard[i - 1];
        var isLedOn = i + 1 < heard.Length && Tendency.Of(slot.Symbol, heard[i + 1].Slot.Symbol).Any(t => t.PitchClass == tone.Value);
        var isItsThird = slot.Symbol.Tones.Any(t => t.PitchClass == tone && t.Role == ToneRole.Guide && t.Degree.Number <= 4);
        return !isLedOn
            && (before.Symbol.Root.PitchClass == slot.Symbol.Root.PitchClass || !isItsThird)
            && before.Symbol != slot.Symbol
            && before.Symbol.PitchClasses.Contains(tone)
            && slot.Symbol.PitchClasses.Contains(tone)
            && Math.Abs((when.Until - heard[i].Hearing.At).Value) < 1e-6
            && before.Duration.Value < 1.500001
            && slot.Duration.Value < 1.500001;
    });

    private static long Rounded(double clashUnits) => (long)Math.Round(clashUnits * 1000, MidpointRounding.AwayFromZero);
}
