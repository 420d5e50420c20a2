using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>The clash of an arrangement's strokes, hearing by hearing, as it is shown to the player; no weights of a sound enter.</summary>
internal sealed class ClashInTime
{
    // -20 dB: below a tenth of its amplitude at the stroke a bell counts as no longer ringing on.
    private static readonly Decibels StillHeard = new(-20);

    private readonly Instrument _instrument;
    private readonly Moment[] _moments;
    private readonly ChordInTime[] _chords;

    /// <summary>For chords and the tune over them.</summary>
    /// <param name="instrument">The tower; it has a bell for every stroke.</param>
    /// <param name="chords">The chords in order of time.</param>
    /// <param name="tune">The strokes of the tune, which belong to no chord of their own.</param>
    public ClashInTime(Instrument instrument, IEnumerable<ChordInTime> chords, IEnumerable<Stroke> tune)
    {
        _instrument = instrument;
        _chords = [.. chords];
        _moments =
        [
            .. _chords.SelectMany((chord, i) => chord.Strokes.Select(s => MomentOf(s, i))),
            .. tune.Select(s => MomentOf(s, HearingAt(s.At))),
        ];
        Windows = WindowsOf(_chords);

        // A stroke of the tune belongs to the last chord that has begun; before the first it is older than all.
        int HearingAt(Seconds at) => Array.FindLastIndex(_chords, c => c.At.Value <= at.Value + 1e-6);
    }

    /// <summary>
    /// For each hearing the time in which it reigns: from its first stroke, or its beat if nothing comes before it, to
    /// where the next begins likewise. A roll that begins before the beat of a very short chord before it ends nothing.
    /// </summary>
    public IReadOnlyList<(Seconds From, Seconds To)> Windows { get; }

    /// <summary>The clash figure of a hearing over its window.</summary>
    public ClashSplit FigureOf(int hearing)
    {
        var (from, to) = Windows[hearing];
        var sounding = Sounding(from, to);
        var (parts, tune, contradiction) = (new double[3], 0.0, 0.0);
        for (var a = 0; a < sounding.Length; a++)
        {
            var stroke = sounding[a];
            var own = stroke.Power * _instrument.Doses.Contradiction(stroke.Bell, _chords[hearing].Chord, from - stroke.At, to - stroke.At);
            contradiction += own;
            Add(stroke, stroke, own);
            for (var b = 0; b < a; b++)
            {
                var earlier = sounding[b];
                Add(stroke, earlier, stroke.Touch * earlier.Touch * _instrument.Doses.RoughnessWithin(
                    earlier.Bell, stroke.Bell, stroke.At - earlier.At, from - earlier.At, to - earlier.At));
            }
        }

        var scale = 100 / _instrument.Doses.ReferenceWithin(to - from);
        var whole = (parts.Sum() + tune) * scale;
        return new ClashSplit(parts[0] * scale, parts[1] * scale, parts[2] * scale, whole - (contradiction * scale), contradiction * scale)
        {
            Tune = tune * scale,
        };

        void Add(Moment later, Moment earlier, double clash)
        {
            if (later.IsTune && earlier.IsTune)
            {
                tune += clash;
            }
            else
            {
                parts[Part(hearing, Math.Min(later.Hearing, earlier.Hearing))] += clash;
            }
        }
    }

    /// <summary>The roughness and the contradiction of all that sounds in a window, as parts of its clash figure.</summary>
    public (double Roughness, double Contradiction) Within(Seconds from, Seconds to)
    {
        var sounding = Sounding(from, to);
        var (roughness, contradiction) = (0.0, 0.0);
        for (var a = 0; a < sounding.Length; a++)
        {
            var stroke = sounding[a];
            for (var i = 0; i < _chords.Length; i++)
            {
                var (begins, ends) = (new Seconds(Math.Max(Windows[i].From.Value, from.Value)), new Seconds(Math.Min(Windows[i].To.Value, to.Value)));
                contradiction += begins < ends
                    ? stroke.Power * _instrument.Doses.Contradiction(stroke.Bell, _chords[i].Chord, begins - stroke.At, ends - stroke.At)
                    : 0;
            }

            for (var b = 0; b < a; b++)
            {
                var earlier = sounding[b];
                roughness += stroke.Touch * earlier.Touch * _instrument.Doses.RoughnessWithin(
                    earlier.Bell, stroke.Bell, stroke.At - earlier.At, from - earlier.At, to - earlier.At);
            }
        }

        var scale = 100 / _instrument.Doses.ReferenceWithin(to - from);
        return (roughness * scale, contradiction * scale);
    }

    /// <summary>
    /// The clash dose that a hearing adds, until all has died away: every pair counted with its later stroke, and what its
    /// strokes contradict from then on; the tune with itself left out.
    /// </summary>
    public double DoseOf(int hearing) => DoseOf(s => s.Hearing == hearing, (a, b) => !(a.IsTune && b.IsTune));

    /// <summary>The clash dose of the tune with itself.</summary>
    public double DoseOfTune() => DoseOf(s => s.IsTune, (a, b) => a.IsTune && b.IsTune);

    private double DoseOf(Func<Moment, bool> counts, Func<Moment, Moment, bool> pairs)
    {
        var dose = 0.0;
        for (var later = 0; later < _moments.Length; later++)
        {
            var stroke = _moments[later];
            if (!counts(stroke))
            {
                continue;
            }

            dose += pairs(stroke, stroke) ? Contradiction(stroke) : 0;
            for (var earlier = 0; earlier < _moments.Length; earlier++)
            {
                var other = _moments[earlier];
                var comesBefore = other.At < stroke.At || (other.At == stroke.At && earlier < later);
                if (comesBefore && pairs(stroke, other) && IsInReach(stroke.At - other.At))
                {
                    dose += stroke.Touch * other.Touch * _instrument.Doses.Roughness(other.Bell, stroke.Bell, stroke.At - other.At);
                }
            }
        }

        return dose;
    }

    /// <summary>The own clash that the close root position would have over the window of a hearing.</summary>
    public double CloseRootOf(int hearing, ChordSymbol symbol)
    {
        var (from, to) = Windows[hearing];
        var bells = ClosePosition.Of(symbol, _instrument.Tower)
            .Select(n => (Bell: _instrument.BellAt(n), Touch: _instrument.TouchOf(n).AmplitudeFactor))
            .ToArray();
        var length = to - from;
        var sum = bells.Sum(b => b.Touch * b.Touch * _instrument.Doses.Contradiction(b.Bell, _chords[hearing].Chord, Seconds.Zero, length));
        for (var a = 0; a < bells.Length; a++)
        {
            for (var b = 0; b < a; b++)
            {
                sum += bells[a].Touch * bells[b].Touch
                    * _instrument.Doses.RoughnessWithin(bells[b].Bell, bells[a].Bell, Seconds.Zero, Seconds.Zero, length);
            }
        }

        return 100 * sum / _instrument.Doses.ReferenceWithin(length);
    }

    /// <summary>What makes up most of the clash of a hearing, worst first.</summary>
    public Items<Quarrel> QuarrelsOf(int hearing, int atMost)
    {
        var (from, to) = Windows[hearing];
        Strike[] strikes = [.. Sounding(from, to).Select(m => new Strike(m.Bell, m.At, m.Level))];
        return _instrument.Doses.Parts(strikes, _chords[hearing].Chord, from, to, atMost).Select(QuarrelOf).ToItems();
    }

    private Quarrel QuarrelOf(ClashPart part)
    {
        var down = -_instrument.Tower.Transposition.Semitones;
        return part switch
        {
            RoughPartials p => new PairQuarrel(
                p.LowerBell.Note, p.Lower.Name, p.Lower.Frequency, p.UpperBell.Note, p.Upper.Name, p.Upper.Frequency, p.Share, p.Lasts),
            ContraryPartial p => new ChordQuarrel(
                p.Bell.Note, p.Partial.Name, p.Partial.Frequency, p.Sounds + down, p.Beside + down, p.Share, p.Lasts),
            _ => throw new ArgumentOutOfRangeException(nameof(part), part, "no such part of a clash"),
        };
    }

    /// <summary>Bells of earlier hearings, not struck again, that still ring above -20 dB of their stroke when a hearing begins.</summary>
    public Items<WrittenNote> RingingOn(int hearing)
    {
        var from = Windows[hearing].From;
        var struck = _chords[hearing].Strokes.Select(s => _instrument.BellAt(s.Note)).ToHashSet();
        return _moments
            .Where(m => m.Hearing < hearing && !m.IsTune && !struck.Contains(m.Bell) && Rings(_instrument.Tower.Bells[m.Bell], from - m.At))
            .Select(m => _instrument.Tower.Bells[m.Bell].Note)
            .Distinct()
            .Order()
            .ToItems();
    }

    private Moment MomentOf(Stroke stroke, int hearing) => new(_instrument.BellAt(stroke.Note), stroke.At, hearing, stroke.Level, stroke.IsTune);

    private static bool Rings(Bell bell, Seconds since)
    {
        var strongest = bell.Partials.Max(p => p.Amplitude);
        return bell.Partials.Any(p => p.Amplitude * Math.Exp(-p.Kappa * since.Value) > strongest * StillHeard.AmplitudeFactor);
    }

    // 0 own, 1 from the chord before, 2 older: by the older of the strokes concerned.
    private static int Part(int hearing, int older) => Math.Clamp(hearing - older, 0, 2);

    private Moment[] Sounding(Seconds from, Seconds to) =>
        [.. _moments.Where(m => m.At < to && IsInReach(from - m.At)).OrderBy(m => m.At.Value)];

    private bool IsInReach(Seconds apart) => apart.Value * 1e6 <= _instrument.Horizon;

    private double Contradiction(Moment stroke)
    {
        var sum = 0.0;
        for (var i = Math.Max(0, stroke.Hearing); i < _chords.Length && IsInReach(_chords[i].At - stroke.At); i++)
        {
            // The lead of a roll belongs to its own chord, as in the price.
            var from = i == stroke.Hearing ? Seconds.Zero : _chords[i].At - stroke.At;
            var to = i + 1 == _chords.Length ? Seconds.Forever : _chords[i].Until - stroke.At;
            sum += stroke.Power * _instrument.Doses.Contradiction(stroke.Bell, _chords[i].Chord, from, to);
        }

        return sum;
    }

    private static (Seconds From, Seconds To)[] WindowsOf(ChordInTime[] chords)
    {
        var from = chords.Select(c => c.Strokes.Select(s => s.At.Value).Prepend(c.At.Value).Min()).ToArray();
        return [.. chords.Select((c, i) => (
            new Seconds(from[i]),
            new Seconds(i + 1 < from.Length && from[i + 1] > from[i] ? Math.Min(c.Until.Value, from[i + 1]) : c.Until.Value)))];
    }

    /// <summary>A stroke as the clash model needs it.</summary>
    private readonly record struct Moment(int Bell, Seconds At, int Hearing, Decibels Level, bool IsTune)
    {
        public double Touch { get; } = Level.AmplitudeFactor;

        public double Power => Touch * Touch;
    }
}
