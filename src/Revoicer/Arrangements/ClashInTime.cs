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
    // As many as any report shows.
    private const int MostQuarrels = 3;

    private readonly Instrument _instrument;
    private readonly Moment[] _moments;
    private readonly ChordInTime[] _chords;
    private readonly Seconds _longestRing;
    private readonly RingSums _sums;
    private readonly Lazy<RungClash[]> _clashes;
    private readonly Lazy<(double Others, double Tune)[]> _doses;
    private readonly Lazy<double[]> _byHearing;

    /// <summary>For chords and the tune over them.</summary>
    /// <param name="instrument">The tower; it has a bell for every stroke.</param>
    /// <param name="chords">The chords in order of time.</param>
    /// <param name="tune">The strokes of the tune, which belong to no chord of their own.</param>
    /// <param name="cancel">Stops the work.</param>
    public ClashInTime(Instrument instrument, IEnumerable<ChordInTime> chords, IEnumerable<Stroke> tune, CancellationToken cancel = default)
    {
        _instrument = instrument;
        _chords = [.. chords];
        Seconds[] begins = [.. _chords.Select(c => c.At)];
        _moments =
        [
            .. _chords.SelectMany((chord, i) => chord.Strokes.Select(s => MomentOf(s, i)))
                .Concat(tune.Select(s => MomentOf(s, HearingAt(s.At))))
                .OrderBy(m => m.At.Value),
        ];
        Windows = WindowsOf(_chords);
        _longestRing = StillRinging.Longest(instrument.Tower);
        _sums = instrument.Doses.Sums([.. _moments.Select(m => new RungStroke(m.Bell, m.At, m.Hearing, m.Touch, m.IsTune))]);
        _clashes = new Lazy<RungClash[]>(() => _sums.Of(
            [.. _chords.Select((c, i) => new RungWindow(Windows[i].From, Windows[i].To, i, [new ReigningChord(c.Chord, Windows[i].From, Windows[i].To)]))], MostQuarrels, cancel));
        _doses = new Lazy<(double, double)[]>(() => [.. _sums.Added(cancel).Select((added, i) => WithContradiction(_moments[i], added))]);
        _byHearing = new Lazy<double[]>(ByHearing);

        // A stroke of the tune belongs to the last chord that has begun; before the first it is older than all.
        int HearingAt(Seconds at) => Sorted.LastUpTo(begins, new Seconds(at.Value + 1e-6));
    }

    /// <summary>
    /// For each hearing the time in which it reigns: from its first stroke, or its beat if nothing comes before it, to
    /// where the next begins likewise. A roll that begins before the beat of a very short chord before it ends nothing.
    /// </summary>
    public IReadOnlyList<(Seconds From, Seconds To)> Windows { get; }

    /// <summary>The clash figure of a hearing over its window.</summary>
    public ClashSplit FigureOf(int hearing)
    {
        var (clash, scale) = (_clashes.Value[hearing], ScaleOf(Windows[hearing].From, Windows[hearing].To));
        var contradiction = (clash.Contradiction + clash.TuneContradiction) * scale;
        return new ClashSplit(
            clash.Parts[0] * scale,
            clash.Parts[1] * scale,
            clash.Parts[2] * scale,
            (clash.Whole * scale) - contradiction,
            contradiction)
        {
            Tune = clash.Tune * scale,
        };
    }

    /// <summary>The clash figures of all that sounds in some windows, in order of time, whatever chords reign in them.</summary>
    /// <param name="windows">The windows; the starts in order.</param>
    /// <param name="cancel">Stops the work.</param>
    public IReadOnlyList<ClashSplit> Within(IReadOnlyList<(Seconds From, Seconds To)> windows, CancellationToken cancel)
    {
        // Where chords begin in order, those of a window stand together.
        var (latest, open) = (new Seconds[_chords.Length], new Seconds[_chords.Length]);
        for (var i = 0; i < _chords.Length; i++)
        {
            latest[i] = i > 0 && latest[i - 1] > Windows[i].To ? latest[i - 1] : Windows[i].To;
        }

        for (var i = _chords.Length - 1; i >= 0; i--)
        {
            open[i] = i + 1 < _chords.Length && open[i + 1] < Windows[i].From ? open[i + 1] : Windows[i].From;
        }

        var clashes = _sums.Of([.. windows.Select(w => new RungWindow(w.From, w.To, RungWindow.AllAlike, [.. Reigning(w.From, w.To)]))], 0, cancel);
        return
        [
            .. clashes.Select((c, i) =>
            {
                var scale = ScaleOf(windows[i].From, windows[i].To);
                var contradiction = (c.Contradiction + c.TuneContradiction) * scale;
                return new ClashSplit(c.Parts[0] * scale, 0, 0, (c.Whole * scale) - contradiction, contradiction) { Tune = c.Tune * scale };
            }),
        ];

        IEnumerable<ReigningChord> Reigning(Seconds from, Seconds to)
        {
            for (var i = Sorted.LastUpTo(latest, from) + 1; i < _chords.Length && open[i] < to; i++)
            {
                yield return new ReigningChord(_chords[i].Chord, Windows[i].From, Windows[i].To);
            }
        }
    }

    private double ScaleOf(Seconds from, Seconds to) => 100 / _instrument.Doses.ReferenceWithin(to - from);

    /// <summary>
    /// The clash dose that a hearing adds, until all has died away: every pair counted with its later stroke, and what its
    /// strokes contradict from then on; the tune with itself left out.
    /// </summary>
    public double DoseOf(int hearing) => _byHearing.Value[hearing];

    /// <summary>The clash dose of the tune with itself.</summary>
    public double DoseOfTune() => _doses.Value.Sum(d => d.Tune);

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
        Strike[] sounding = [.. Sounding(from, to).Select(m => new Strike(m.Bell, m.At, m.Level))];
        return _clashes.Value[hearing].Largest.Take(atMost)
            .Select(part => QuarrelOf(_instrument.Doses.Part(part, sounding, _chords[hearing].Chord, from, to)))
            .ToItems();
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
        return Between(from.Value - _longestRing.Value, Windows[hearing].To)
            .Where(m => m.Hearing < hearing && !m.IsTune && !struck.Contains(m.Bell) && StillRinging.Is(_instrument.Tower.Bells[m.Bell], from - m.At))
            .Select(m => _instrument.Tower.Bells[m.Bell].Note)
            .Distinct()
            .Order()
            .ToItems();
    }

    private Moment MomentOf(Stroke stroke, int hearing) => new(_instrument.BellAt(stroke.Note), stroke.At, hearing, stroke.Level, stroke.IsTune);

    private double[] ByHearing()
    {
        var doses = new double[_chords.Length];
        foreach (var (i, dose) in _doses.Value.Index().Where(d => _moments[d.Index].Hearing >= 0))
        {
            doses[_moments[i].Hearing] += dose.Others;
        }

        return doses;
    }

    private (double Others, double Tune) WithContradiction(Moment stroke, (double Others, double Tune) added) => stroke.IsTune
        ? (added.Others, added.Tune + Contradiction(stroke))
        : (added.Others + Contradiction(stroke), added.Tune);

    // Those that still sound in a window as much as a figure can show.
    private IEnumerable<Moment> Sounding(Seconds from, Seconds to) => Between(from.Value - (_instrument.Horizon * 1e-6), to);

    private IEnumerable<Moment> Between(double after, Seconds before)
    {
        for (var i = Sorted.LastUpTo(_moments, after, m => m.At.Value) + 1; i < _moments.Length && _moments[i].At < before; i++)
        {
            yield return _moments[i];
        }
    }

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
