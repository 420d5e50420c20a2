using Revoicer.Chords;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>
/// Prices the candidates of one slot by themselves: everything that does not depend on how the other slots are voiced.
/// A slot heard more than once pays for each hearing.
/// </summary>
internal sealed class SlotPrice
{
    /// <summary>A silent slot carries nothing; it is priced as if it carried so little, as the logarithm gives no number. Estimate.</summary>
    public static readonly Decibels Silence = new(-30);

    private const int FullChord = 3;

    // What a bell other than before costs where the new voicing is to stay as close as can be: two bells moved cost more than
    // all but a badly clashing chord has to gain. Estimate.
    private const double MovedBell = 50;

    private static readonly Seconds RollWelcomeFrom = new(1.5);

    private readonly Instrument _instrument;
    private readonly Sound _sound;
    private readonly Slot _slot;
    private readonly StrokeKinds _kinds;
    private readonly int[] _contradiction;
    private readonly (double Energy, double Moment)[] _heard;
    private readonly int[] _withTune;
    private readonly int[] _hurry;
    private readonly (double Energy, double Moment) _heardOfTune;
    private readonly MissingTones _missing;
    private readonly WrittenNote? _tuneBelow;
    private readonly StrokeTable _together;

    // Hearings after nothing, or after the slot itself, whose bass does not move; what comes after another slot is priced
    // with that slot.
    private readonly int _hearingsNotByStep;

    public SlotPrice(Instrument instrument, Sound sound, Slot slot, StrokeKinds kinds, ChordsInTime chords, TuneInTime tune)
    {
        _instrument = instrument;
        _sound = sound;
        _slot = slot;
        _kinds = kinds;
        _contradiction = new int[kinds.Count];
        _withTune = new int[kinds.Count];
        _hurry = new int[kinds.Count];
        _heard = new (double, double)[kinds.Count];
        _heardOfTune = tune.Heard(slot.Hearings[0].At, slot.Hearings[0].Until);
        _missing = new MissingTones(sound, slot);
        _tuneBelow = slot.HasTuneBelow ? slot.TuneHere.Select(n => (WrittenNote?)n.Note).Min() : null;
        for (var k = 0; k < kinds.Count; k++)
        {
            var kind = kinds[k];
            var offset = new Seconds(kind.Offset * 1e-6);
            var rest = new Seconds(Math.Min(slot.Duration.Value, slot.Duration.Value - offset.Value));
            var power = Math.Pow(instrument.TouchOf(instrument.Tower.Bells[kind.Bell].Note).AmplitudeFactor, 2);
            _contradiction[k] = slot.Hearings.Sum(h => Thousandths.Of(sound.Clash * power * chords.Contradiction(instrument.Doses, kind.Bell, h, offset)));
            _withTune[k] = slot.Hearings.Sum(h => tune.Roughness(kind, StrokeKinds.Microseconds(h.At)));
            _hurry[k] = slot.Hearings.Sum(h => tune.Hurry(kind, StrokeKinds.Microseconds(h.At)));
            _heard[k] = (power * instrument.Carry.CarryEnergy(kind.Bell, Seconds.Zero, rest), power * instrument.Carry.LogFrequency(kind.Bell, Seconds.Zero, rest));
        }

        _together = StrokeTable.Between(instrument, kinds, kinds, [0], withMoves: false);
        _hearingsNotByStep = slot.Hearings.Count(h => !chords.HasBefore(h) || slot.Hearings.Any(before => before.Order == h.Order - 1));
    }

    /// <summary>The terms that depend on bells and limbs alone, alike in every figure.</summary>
    public TermPrices OfVoicing(Voicing voicing)
    {
        var times = _slot.Hearings.Count;
        var prices = new TermPrices();
        prices[Term.MissingTones] = times * Thousandths.Of(_missing.Price(voicing));
        prices[Term.Thin] = times * Thousandths.Of(_slot.IsQuick ? 0 : _sound.Thin * Math.Max(0, FullChord - voicing.Bells));
        prices[Term.DoubledTones] = times * Thousandths.Of(_sound.Doubled * (voicing.Bells - voicing.PitchClasses.Count));
        prices[Term.Bass] = BassPrice(voicing, times);
        prices[Term.Gap] = times * Thousandths.Of(_sound.Gap * SemitonesOverGap(voicing));
        prices[Term.Effort] = times * Thousandths.Of(_sound.Effort * EffortOf(voicing));
        return prices;
    }

    /// <summary>The terms that depend on when the bells are struck.</summary>
    public TermPrices OfStrokes(Candidate candidate, int number)
    {
        var times = _slot.Hearings.Count;
        var kinds = _kinds.Of(number);
        var prices = new TermPrices();
        prices[Term.OwnRoughness] = times * _together.SumOfPairs(kinds);
        prices[Term.Contradiction] = Sum(_contradiction, kinds);
        prices[Term.WithTune] = Sum(_withTune, kinds);
        prices[Term.Moves] = Sum(_hurry, kinds) + (times * HurryWithin(kinds));
        prices[Term.Figure] = times * Thousandths.Of(FigurePrice(candidate));
        prices[Term.FromOriginal] = _slot.Original is { } original
            ? times * Thousandths.Of(MovedBell * original.Closeness * original.DistanceTo(candidate))
            : 0;
        var (carry, semitonesWanting) = Heard(kinds);
        prices[Term.Carry] = times * Thousandths.Of(_sound.CarryShortfall * Math.Max(0, _sound.CarryTarget.Value - carry.Value));
        prices[Term.Brightness] = times * Thousandths.Of(_sound.BrightnessShortfall * Math.Max(0, semitonesWanting));
        return prices;
    }

    /// <summary>How far a candidate carries with the tune over it, at the first hearing; <see cref="Silence"/> where nothing sounds.</summary>
    /// <param name="number">The candidate's number.</param>
    public Decibels Carry(int number) => Heard(_kinds.Of(number)).Carry;

    /// <summary>What a bass other than the symbol's costs more where it is not reached by step, for each hearing.</summary>
    public int NotByStep(Voicing voicing) => _slot.IsStrong && !_slot.HasTuneBelow && OtherBass(voicing) is { } price
        ? Thousandths.Of(Math.Max(0, price - _sound.WeakBeatBass))
        : 0;

    private static int Sum(int[] prices, ReadOnlySpan<int> kinds)
    {
        var sum = 0;
        foreach (var kind in kinds)
        {
            sum += prices[kind];
        }

        return sum;
    }

    // The hurry of limbs that strike more than once in the slot.
    private int HurryWithin(ReadOnlySpan<int> kinds)
    {
        var sum = 0;
        for (var later = 1; later < kinds.Length; later++)
        {
            for (var earlier = 0; earlier < later; earlier++)
            {
                sum += _instrument.Hurry(_kinds[kinds[earlier]], _kinds[kinds[later]], 0);
            }
        }

        return sum;
    }

    // Where the tune lies below it is the bass, and given.
    private int BassPrice(Voicing voicing, int times)
    {
        if (_slot.HasTuneBelow)
        {
            return 0;
        }

        var foot = voicing.Bass is { } bass ? _sound.BassHeight * (bass - _instrument.Tower.PedalsFrom).Semitones
            : _slot.IsQuick ? 0
            : _sound.NoBass;
        var other = OtherBass(voicing) is { } price ? Math.Min(price, _sound.WeakBeatBass) : 0;
        return (times * Thousandths.Of(foot + other)) + (_hearingsNotByStep * NotByStep(voicing));
    }

    // The price of another lowest bell than the symbol's on a strong beat; null where it has that bell or none.
    private double? OtherBass(Voicing voicing)
    {
        if (voicing.Lowest is not { } lowest || lowest.PitchClass == _slot.Symbol.Lowest.PitchClass || (_slot.IsQuick && voicing.Bass is null))
        {
            return null;
        }

        return lowest.PitchClass == _slot.Symbol.Third ? _sound.ThirdInBass : _sound.OtherBass;
    }

    private double FigurePrice(Candidate candidate)
    {
        var bells = candidate.Voicing.Bells;
        var marksForm = bells >= 2 && !_slot.IsQuick && (_slot.BeginsPhrase || _slot.IsLast);
        var welcome = marksForm || (bells >= 3 && _slot.Duration > RollWelcomeFrom);
        return candidate.Figure switch
        {
            Figure.Silent => 0,
            Figure.Together => marksForm ? _sound.RollForgone : welcome ? _sound.RollForgone / 4 : 0,
            Figure.Rolled => welcome ? 0 : _sound.Rolled,
            Figure.BassFirst => _sound.BassFirst,
            Figure.Afterbeats => _sound.Afterbeats,
            Figure.Broken => _sound.Broken,
            Figure.InTenths => _sound.InTenths,
            Figure.AsItWas => 0,
            _ => throw new ArgumentOutOfRangeException(nameof(candidate), candidate.Figure, "no such figure"),
        };
    }

    private int SemitonesOverGap(Voicing voicing)
    {
        const int seventeenth = 28;
        return (voicing.SecondPedal ?? voicing.Bass ?? _tuneBelow) is { } low && voicing.Upper.Count > 0
            ? Math.Max(0, (voicing.Upper[0].Note - low).Semitones - seventeenth)
            : 0;
    }

    private double EffortOf(Voicing voicing)
    {
        Span<WrittenNote> room = stackalloc WrittenNote[voicing.InGrip];
        var notes = room[..voicing.CopyGrip(room)];
        var pedals = voicing.InGrip - voicing.Upper.Count;
        var left = 0;
        foreach (var baton in voicing.Upper.AsSpan())
        {
            left += baton.Limb == Limb.LeftHand ? 1 : 0;
        }

        return _instrument.Effort.OfGrip(notes[..pedals], notes.Slice(pedals, left), notes[(pedals + left)..])
            + _instrument.Effort.OfRegister(notes);
    }

    // Carry in dB, and the semitones by which brightness falls short of the target.
    private (Decibels Carry, double SemitonesWanting) Heard(ReadOnlySpan<int> kinds)
    {
        var (energy, moment) = _heardOfTune;
        foreach (var kind in kinds)
        {
            energy += _heard[kind].Energy;
            moment += _heard[kind].Moment;
        }

        if (energy <= 0)
        {
            return (Silence, 0);
        }

        var brightness = TowerCarry.Brightness(energy, moment);
        return (_instrument.Carry.Carry(energy, _slot.Duration), 12 * Math.Log2(_sound.BrightnessTarget.Value / brightness.Value));
    }
}
