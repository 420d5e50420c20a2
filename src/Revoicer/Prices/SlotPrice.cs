using Revoicer.Bells;
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

    // Where music is to stay as close as can be: what it costs that a chord is another at all, and each bell that moved. Set by
    // the hymns of docs/playing.md, so that at 1 nine in ten of the chords that can be played stay as they are.
    private const double MovedChord = 400;
    private const double MovedBell = 50;

    // What it costs that a chord of music that exists loses its bass or its inner voice, whatever else is asked. Estimate.
    private const double LostVoice = 150;

    // The line on top of chords without a tune pays a tenth of what a tune pays outside its home. Estimate.
    private const double LineOnTop = 10;
    private const int LineAbove = 5;

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
    private readonly TuneHeard _tuneHeard;
    private readonly TuneHome _lineHome;

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

        _lineHome = instrument.Tower.Home with { To = instrument.Tower.Home.To + new Interval(LineAbove) };
        _tuneHeard = new TuneHeard(instrument, sound, slot, kinds);
        _together = StrokeTable.Between(instrument, kinds, kinds, [0], withMoves: false);
        Bass = new BassPrice(instrument.Tower, sound, slot, chords);
    }

    /// <summary>The prices of its bass.</summary>
    public BassPrice Bass { get; }

    /// <summary>The terms that depend on bells and limbs alone, alike in every figure.</summary>
    public TermPrices OfVoicing(Voicing voicing)
    {
        var times = _slot.Hearings.Count;
        var prices = new TermPrices();
        var ringing = _slot.LeftRinging(voicing);
        prices[Term.MissingTones] = times * _missing.Price(voicing, ringing);
        prices[Term.Thin] = times * Thin(voicing.Bells + ringing.Count);
        prices[Term.BareHands] = times * Thousandths.Of(!_slot.IsPassing && voicing.Upper.Count == 0 ? _sound.BareHands : 0);
        prices[Term.TopLine] = (times * Thousandths.Of(TopOutsideHome(voicing)))
            + (Bass.HearingsAfterItself * Thousandths.Of(_slot.Tunes.Count == 0 && voicing.Upper.Count > 0 ? _sound.TopAgain : 0));
        prices[Term.DoubledTones] = times * Thousandths.Of(_sound.Doubled * (voicing.Bells - voicing.PitchClasses.Count));
        prices[Term.LowThird] = times * Thousandths.Of(Spread.HasLowThird(voicing, _slot.Symbol.Third) ? _sound.LowThird : 0);
        prices[Term.Bass] = Bass.Of(voicing);
        prices[Term.Gap] = times * Thousandths.Of(_sound.Gap * Spread.OverGap(voicing, _tuneBelow));
        prices[Term.Effort] = times * Thousandths.Of(_sound.Effort * EffortOf(voicing));
        return prices;
    }

    /// <summary>What it costs at one hearing that shared tones which a voicing leaves out do not ring on from the chord before.</summary>
    /// <param name="left">What it leaves out.</param>
    /// <param name="struck">What the hands struck in the chord before.</param>
    public int NotRinging(LeftTones left, PitchClassSet struck)
    {
        var silent = left.Tones.Except(struck);
        return _missing.Price(silent) + Thin(left.Bells + left.Tones.Count - silent.Count) - Thin(left.Bells + left.Tones.Count);
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
        prices[Term.NearTune] = times * _tuneHeard.Near(kinds);
        prices[Term.Drowned] = times * _tuneHeard.Drowned(kinds);
        prices[Term.Moves] = Sum(_hurry, kinds) + (times * HurryWithin(kinds));
        prices[Term.Figure] = times * Thousandths.Of(FigurePrice(candidate));
        prices[Term.Approach] = -times * Thousandths.Of(candidate.Approach is null ? 0 : _sound.Approach);
        prices[Term.FromOriginal] = times * Thousandths.Of(FromOriginal(candidate));
        var (carry, semitonesWanting) = Heard(kinds);
        prices[Term.Carry] = times * Thousandths.Of(_sound.CarryShortfall * Math.Max(0, _sound.CarryTarget.Value - carry.Value));
        prices[Term.Brightness] = times * Thousandths.Of(_sound.BrightnessShortfall * Math.Max(0, semitonesWanting));
        return prices;
    }

    /// <summary>How far a candidate carries with the tune over it, at the first hearing; <see cref="Silence"/> where nothing sounds.</summary>
    /// <param name="number">The candidate's number.</param>
    public Decibels Carry(int number) => Heard(_kinds.Of(number)).Carry;

    /// <summary>How far each stroke of the tune lies under what a candidate strikes with it.</summary>
    public IEnumerable<(Seconds After, Decibels Under)> TuneLevels(int number) => _tuneHeard.Levels(number);

    private int Thin(int bells) => Thousandths.Of(_slot.IsPassing ? 0 : _sound.Thin * Math.Max(0, _sound.FullChord - bells));

    private double FromOriginal(Candidate candidate)
    {
        if (_slot.Original is not { } original)
        {
            return 0;
        }

        var distance = original.DistanceTo(candidate);
        return distance == 0
            ? 0
            : (original.Closeness * (MovedChord + (MovedBell * distance))) + (LostVoice * original.Wanting(_slot, candidate));
    }

    // Without a tune the highest tone of the hands is heard as one, though it may go higher.
    private double TopOutsideHome(Voicing voicing) => _slot.Tunes.Count > 0 || voicing.Upper.Count == 0
        ? 0
        : _sound.Home / LineOnTop * _lineHome.Outside(voicing.Upper[^1].Note) * _slot.Duration.Value;

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

    private double FigurePrice(Candidate candidate)
    {
        var bells = candidate.Voicing.Bells;
        var marksForm = bells >= 2 && !_slot.IsPassing && (_slot.BeginsPhrase || _slot.IsLast);
        var welcome = marksForm || (bells >= 3 && _slot.Duration > RollWelcomeFrom);
        return Figures.Of(candidate.Figure).Price(_sound, new FigureMoment(marksForm, welcome, _slot.IsLast));
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

        var lower = notes.Slice(pedals, left);
        var upper = notes[(pedals + left)..];
        var limbs = _instrument.Reach.HandTakes(lower) && _instrument.Reach.HandTakes(upper)
            ? _instrument.Effort.OfGrip(notes[..pedals], lower, upper)
            : _instrument.Effort.OneByOne(notes[..pedals], notes[pedals..]);
        return limbs + _instrument.Effort.OfRegister(notes);
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
