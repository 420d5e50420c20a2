using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Tests.Prices;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Tests.Oracles;

/// <summary>
/// Prices a choice as it is heard: every stroke of every hearing against every other, every hearing after the one before
/// it. Slow, without tables, links and repeats; in thousandths, each summand rounded as the prices round theirs.
/// </summary>
internal sealed class StrokeByStroke
{
    private readonly Sound _sound;
    private readonly Instrument _instrument;
    private readonly List<Heard> _heard;
    private readonly List<Struck> _strokes;

    public StrokeByStroke(PricedSheet sheet, int[] choice)
    {
        _sound = sheet.Sound;
        _instrument = sheet.Prices.Instrument;
        _heard = [.. sheet.Plan.InTime().Select(h => new Heard(h.Slot, h.Hearing, sheet.Candidates[h.Slot.Index][choice[h.Slot.Index]]))];
        _strokes = [.. _heard.SelectMany(Strokes).OrderBy(s => s.Microseconds)];
    }

    /// <summary>Roughness among the strokes of single hearings.</summary>
    public long OwnRoughness() => Pairs().Where(p => p.Earlier.Order == p.Later.Order).Sum(p => Roughness(p.Earlier, p.Later));

    /// <summary>Roughness between strokes of different hearings.</summary>
    public long Ringing() => Pairs().Where(p => p.Earlier.Order != p.Later.Order).Sum(p => Roughness(p.Earlier, p.Later));

    /// <summary>Hurry of limbs, and between different hearings what cannot follow.</summary>
    public long Moves() => Pairs().Where(p => p.Earlier.Order != p.Later.Order || !IsAtOnce(p.Earlier, p.Later)).Sum(p => Move(p.Earlier, p.Later));

    /// <summary>Every stroke against its own chord and all that follow.</summary>
    public long Contradiction() => _strokes.Sum(s => Rounded(_sound.Clash * Touch(s.Note) * Touch(s.Note) * _heard.Skip(s.Order).Sum(h => Contradiction(s, h))));

    /// <summary>Tones that are neither struck nor ring on from the chord before, and bells that a full chord would have more.</summary>
    public long LeftOut() => new TonesLeftOut(_sound, [.. _heard.Select(h => (h.Slot, h.Hearing, h.Candidate))]).Price();

    /// <summary>Movement of the tones in the hands from each hearing to the next.</summary>
    public long VoiceLeading() => Steps().Sum(s => Rounded(_sound.VoiceLeading * LeastMovement.Of(s.Before.Hands, s.After.Hands)));

    /// <summary>Leading tones, sevenths and suspended fourths in the hands that the next hearing leaves unanswered.</summary>
    public long Tendencies() => Steps().Sum(s => s.After.Hands.Length == 0 ? 0 : Rounded(_sound.Tendency)
        * s.Before.Hands.Count(tone => Tendency.Of(s.Before.Slot.Symbol, s.After.Slot.Symbol).Any(t => t.IsLost(tone, s.After.Hands))));

    /// <summary>The number of tones in the hands from hearing to hearing within a phrase.</summary>
    public long NumberOfTones() => Steps().Where(s => s.Before.Slot.Phrase == s.After.Slot.Phrase)
        .Sum(s => Rounded(_sound.NumberOfTones * Math.Max(0, Math.Abs(s.Before.Hands.Length - s.After.Hands.Length) - 1)));

    /// <summary>The highest tones where there is no tune: how far above or below the tune's home, and leaps beyond a fifth.</summary>
    public long TopLine()
    {
        var home = _instrument.Tower.Home;
        return _heard.Where(h => h.Hands.Length > 0).Sum(h => Rounded(_sound.Home / 10 * h.Slot.Duration.Value
                * (Math.Max(0, home.From.Midi - h.Hands.Max()) + Math.Max(0, h.Hands.Max() - home.To.Midi - 5))))
            + Steps().Where(s => s.Before.Hands.Length > 0 && s.After.Hands.Length > 0)
                .Sum(s => s.Before.Hands.Max() == s.After.Hands.Max()
                    ? Rounded(_sound.TopAgain)
                    : Rounded(_sound.TopLeap * Math.Max(0, Math.Abs(s.Before.Hands.Max() - s.After.Hands.Max()) - 7)));
    }

    /// <summary>Changes of figure within a phrase.</summary>
    public long Steadiness() => Rounded(_sound.FigureChange) * Steps().Count(s =>
        s.Before.Slot.Phrase == s.After.Slot.Phrase
        && s.Before.Candidate.Figure != s.After.Candidate.Figure
        && !(s.Before.Candidate.Figure is Figure.Together or Figure.Rolled && s.After.Candidate.Figure is Figure.Together or Figure.Rolled)
        && s.Before.Candidate.Figure != Figure.Silent
        && s.After.Candidate.Figure != Figure.Silent);

    /// <summary>All that is said of the bass: its height, another tone than the symbol's, its leaps.</summary>
    public long Bass()
    {
        var before = Steps().ToDictionary(s => s.After.Hearing.Order, s => s.Before);
        return _heard.Sum(h => BassAlone(h) + (LeadsNowhere(before.GetValueOrDefault(h.Hearing.Order), h)
                ? Thousandths.Forbidden
                : BassAfter(LastBass(before.GetValueOrDefault(h.Hearing.Order)), h)))
            + Steps().Sum(s => LeadsNowhere(s.Before, s.After) ? 0 : Line(s.Before, s.After));
    }

    /// <summary>What tones that lead into the next bass are worth, less than nothing.</summary>
    public long Approach() => -Rounded(_sound.Approach) * _heard.Count(h => h.Candidate.Approach is not null);

    private static WrittenNote? LastBass(Heard? heard) => heard?.Candidate.Approach ?? heard?.Candidate.Voicing.Bass;

    // A tone that should lead by step into the next bass, and does not.
    private static bool LeadsNowhere(Heard? before, Heard after) =>
        before?.Candidate.Approach is { } tone && !(after.Candidate.Voicing.Bass is { } bass && Math.Abs(bass.Midi - tone.Midi) is 1 or 2);

    // What does not depend on the chord before: how high the bass lies, and that part of another bass which is always paid.
    private long BassAlone(Heard h)
    {
        var foot = h.Candidate.Voicing.Bass is { } bass
            ? (_sound.BassHeight * (bass.Midi - _instrument.Tower.PedalsFrom.Midi)) + (_sound.DeepBass * Deep(h.Slot, bass.Midi))
            : h.Hearing.IsNewChord ? _sound.NoBass
            : _sound.NoBass / 10;
        return Rounded(foot + (OtherBass(h) is { } other ? Math.Min(other, _sound.WeakBeatBass) : 0));
    }

    // Towards ends a bass is wanted deep, on the way it is not; at the first chord it is all one.
    private int Deep(Slot slot, int bass) =>
        slot.IsLast || slot.IsCadence ? bass - _instrument.Tower.PedalsFrom.Midi : slot.IsFirst ? 0 : Math.Max(0, 60 - bass);

    // The rest of another bass where a strong beat does not reach it by step, and semitones of a leap beyond a fifth.
    private long BassAfter(WrittenNote? before, Heard h)
    {
        var size = before is { } a && h.Candidate.Voicing.Bass is { } b ? Math.Abs(a.Midi - b.Midi) : (int?)null;
        var rest = h.Slot.IsStrong && OtherBass(h) is { } other ? Math.Max(0, other - _sound.WeakBeatBass) : 0;
        return (size is 1 or 2 ? 0 : Rounded(rest)) + (size > 7 ? (size.Value - 7) * Rounded(_sound.BassLeap) : 0);
    }

    // The same bell again under one chord; and basses that should go by step but do not.
    private long Line(Heard before, Heard after)
    {
        if (before.Candidate.Voicing.Bass is not { } a || after.Candidate.Voicing.Bass is not { } b)
        {
            return 0;
        }

        var (chord, next) = (before.Slot.Symbol, after.Slot.Symbol);
        if (Tendency.Of(chord, next).Any(t => t.IsLost(a.Midi, [b.Midi])))
        {
            return Rounded(_sound.BassStep);
        }

        int[] steps = [1, 2, 10, 11];
        var asked = steps.Contains(Math.Abs(chord.Lowest.PitchClass.Value - next.Lowest.PitchClass.Value));
        return asked ? (Math.Abs(a.Midi - b.Midi) is 1 or 2 ? 0 : Rounded(_sound.BassStep))
            : a == b && chord == next ? Rounded(_sound.BassAgain)
            : 0;
    }

    private double? OtherBass(Heard h) => (h.Candidate.Lowest?.PitchClass, h.Candidate.Voicing.Bass) switch
    {
        (null, _) => null,
        (_, null) when h.Slot.IsQuick => null,
        ({ } lowest, _) when lowest == h.Slot.Symbol.Lowest.PitchClass => null,
        ({ } lowest, _) => lowest == h.Slot.Symbol.Third ? _sound.ThirdInBass : _sound.OtherBass,
    };

    private long Roughness(Struck a, Struck b) =>
        Rounded(_sound.Clash * Touch(a.Note) * Touch(b.Note) * _instrument.Doses.Roughness(a.Bell, b.Bell, new Seconds((b.Microseconds - a.Microseconds) * 1e-6)));

    // The factor on the amplitude: bells below written middle C are struck as the sound asks.
    private double Touch(WrittenNote note) => note.Midi < 60 ? Math.Pow(10, _sound.HeavyTouch.Value / 20) : 1;

    private long Move(Struck a, Struck b)
    {
        var has = new Seconds((b.Microseconds - a.Microseconds) * 1e-6);
        var reach = _instrument.Reach;
        return has < reach.AtOnce || !reach.MayFollow(a.Note, a.Limb, b.Note, b.Limb, has) ? Thousandths.Forbidden
            : a.Limb != b.Limb ? 0
            : Rounded(_sound.Effort * Effort.OfHurry(has, reach.EasyMoveTime(a.Limb, a.Note, b.Note)));
    }

    // Within a slot what is listed can be played, so nothing needs forbidding there.
    private bool IsAtOnce(Struck a, Struck b) => (b.Microseconds - a.Microseconds) * 1e-6 < _instrument.Reach.AtOnce.Value - 1e-6;

    private double Contradiction(Struck stroke, Heard under)
    {
        var struck = new Seconds(under.Hearing.At.Value - (_heard[stroke.Order].Hearing.At.Value + stroke.Offset));
        var symbol = under.Slot.Symbol;
        var chord = new ChordClasses(symbol.PitchClasses, symbol.Third).Moved(_instrument.Tower.Transposition.Semitones);
        var isOwn = under.Hearing.Order == stroke.Order;
        var isLast = under.Hearing.Order == _heard.Count - 1;
        var length = under.Hearing.Until - under.Hearing.At;
        return _instrument.Doses.Contradiction(
            stroke.Bell, chord, isOwn ? Seconds.Zero : struck, isLast ? Seconds.Forever : struck + length);
    }

    // From each hearing to the next, where no gap without chord lies between.
    private IEnumerable<(Heard Before, Heard After)> Steps() =>
        _heard.Zip(_heard.Skip(1)).Where(s => s.First.Hearing.Until >= s.Second.Hearing.At);

    private IEnumerable<(Struck Earlier, Struck Later)> Pairs() =>
        from later in Enumerable.Range(0, _strokes.Count)
        from earlier in Enumerable.Range(0, later)
        select (_strokes[earlier], _strokes[later]);

    private IEnumerable<Struck> Strokes(Heard heard) =>
        from stroke in heard.Candidate.Strokes
        let quarter = heard.Slot.Duration.Value / heard.Slot.Length.Quarters
        let offset = Math.Round(1e6 * ((stroke.After.Quarters * quarter) - (stroke.LeadSteps * _sound.RollStep.Value)))
        let at = (long)(Math.Round(heard.Hearing.At.Value * 1e6) + offset)
        select new Struck(heard.Hearing.Order, _instrument.BellAt(stroke.Note), stroke.Note, stroke.Limb, at, offset * 1e-6);

    private static long Rounded(double clashUnits) => (long)Math.Round(clashUnits * 1000, MidpointRounding.AwayFromZero);

    private sealed record Heard(Slot Slot, Hearing Hearing, Candidate Candidate)
    {
        public int[] Hands => [.. Candidate.Voicing.Upper.Select(b => b.Note.Midi)];
    }

    private sealed record Struck(int Order, int Bell, WrittenNote Note, Limb Limb, long Microseconds, double Offset);
}
