using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>
/// What it costs to go from the bass of one slot to that of the next. The line runs between the first basses of the slots; a leap
/// is made from the last bass that a slot struck. An approach tone goes by step, or it is none.
/// </summary>
internal sealed class BassMotion
{
    private const int WholeTone = 2;
    private const int Fifth = 7;

    private readonly int _leap;
    private readonly int _step;
    private readonly int _again;
    private readonly bool _isStepAsked;
    private readonly Tendencies _tendencies;

    /// <summary>From a slot to one that follows it.</summary>
    public BassMotion(Sound sound, Slot before, Slot after)
    {
        _leap = Thousandths.Of(sound.BassLeap);
        _step = Thousandths.Of(sound.BassStep);
        _again = before.Symbol == after.Symbol ? Thousandths.Of(sound.BassAgain) : 0;
        _isStepAsked = LieAStepApart(before.Symbol.Lowest.PitchClass.Value, after.Symbol.Lowest.PitchClass.Value);
        _tendencies = Tendencies.Between(before.Symbol, after.Symbol);
    }

    /// <summary>The price of two basses, each time that one follows the other.</summary>
    public int Price(BassAndFigure before, BassAndFigure after)
    {
        var move = Math.Abs(before.LastBass - after.Bass);
        if (before.IsApproach && (after.Bass == 0 || move is 0 or > WholeTone))
        {
            return Thousandths.Forbidden;
        }

        if (before.Bass == 0 || after.Bass == 0)
        {
            return after.NotByStep;
        }

        var line = MissesStep(before.Bass, after.Bass) ? _step : move == 0 ? _again : 0;
        return line + (_leap * Math.Max(0, move - Fifth)) + (move is > 0 and <= WholeTone ? 0 : after.NotByStep);
    }

    // Where the symbols ask for a step and the bells take none, or a leading tone is not led on.
    private bool MissesStep(int before, int after) =>
        (_isStepAsked && Math.Abs(before - after) is 0 or > WholeTone) || _tendencies.Unanswered([before], [after]) > 0;

    // Whether two basses lie a semitone or two apart, octaves aside.
    private static bool LieAStepApart(int a, int b) => Math.Abs(a - b) % 12 is 1 or 2 or 10 or 11;
}
