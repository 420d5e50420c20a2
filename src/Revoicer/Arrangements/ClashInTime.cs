using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Arrangements;

/// <summary>The clash of an arrangement's strokes, hearing by hearing, as it is shown to the player; no weights of a sound enter.</summary>
internal sealed class ClashInTime
{
    // -20 dB: below a tenth of its amplitude at the stroke a bell counts as no longer ringing on.
    private static readonly Decibels StillHeard = new(-20);

    private readonly Instrument _instrument;
    private readonly StrokesInTime _strokes;
    private readonly Moment[] _moments;
    private readonly ChordClasses[] _chords;

    public ClashInTime(Instrument instrument, SlotPlan plan, StrokesInTime strokes)
    {
        _instrument = instrument;
        _strokes = strokes;
        var inTime = plan.InTime().ToArray();
        _chords = [.. inTime.Select(h => new ChordClasses(h.Slot.Symbol.PitchClasses, h.Slot.Symbol.Third).Moved(instrument.Tower.Transposition.Semitones))];
        _moments = [.. inTime.SelectMany((_, i) => strokes.OfHearing[i].Select(s => new Moment(instrument.BellAt(s.Note), s.At, i)))];
        Windows = WindowsOf(inTime, strokes);
    }

    /// <summary>
    /// For each hearing the time in which it reigns: from its first stroke, or its beat if nothing comes before it, to
    /// where the next begins likewise.
    /// </summary>
    public IReadOnlyList<(Seconds From, Seconds To)> Windows { get; }

    /// <summary>The clash figure of a hearing over its window.</summary>
    public ClashSplit FigureOf(int hearing)
    {
        var (from, to) = Windows[hearing];
        var sounding = Sounding(from, to);
        var parts = new double[3];
        var contradiction = 0.0;
        for (var a = 0; a < sounding.Length; a++)
        {
            var stroke = sounding[a];
            var own = _instrument.Doses.Contradiction(stroke.Bell, _chords[hearing], from - stroke.At, to - stroke.At);
            parts[Part(hearing, stroke.Hearing)] += own;
            contradiction += own;
            for (var b = 0; b < a; b++)
            {
                var earlier = sounding[b];
                parts[Part(hearing, earlier.Hearing)] += _instrument.Doses.RoughnessWithin(
                    earlier.Bell, stroke.Bell, stroke.At - earlier.At, from - earlier.At, to - earlier.At);
            }
        }

        var scale = 100 / _instrument.Doses.ReferenceWithin(to - from);
        var whole = parts.Sum() * scale;
        return new ClashSplit(parts[0] * scale, parts[1] * scale, parts[2] * scale, whole - (contradiction * scale), contradiction * scale);
    }

    /// <summary>
    /// The clash dose that a hearing adds, until all has died away: every pair counted with its later stroke, and what its
    /// strokes contradict from then on.
    /// </summary>
    public double DoseOf(int hearing)
    {
        var dose = 0.0;
        for (var later = 0; later < _moments.Length; later++)
        {
            var stroke = _moments[later];
            if (stroke.Hearing != hearing)
            {
                continue;
            }

            dose += Contradiction(stroke);
            for (var earlier = 0; earlier < _moments.Length; earlier++)
            {
                var other = _moments[earlier];
                var comesBefore = other.At < stroke.At || (other.At == stroke.At && earlier < later);
                if (comesBefore && IsInReach(stroke.At - other.At))
                {
                    dose += _instrument.Doses.Roughness(other.Bell, stroke.Bell, stroke.At - other.At);
                }
            }
        }

        return dose;
    }

    /// <summary>The own clash that the close root position would have over the window of a hearing.</summary>
    public double CloseRootOf(int hearing, Slot slot)
    {
        var (from, to) = Windows[hearing];
        var bells = ClosePosition.Of(slot.Symbol, _instrument.Tower).Select(_instrument.BellAt).ToArray();
        var length = to - from;
        var sum = bells.Sum(b => _instrument.Doses.Contradiction(b, _chords[hearing], Seconds.Zero, length));
        for (var a = 0; a < bells.Length; a++)
        {
            for (var b = 0; b < a; b++)
            {
                sum += _instrument.Doses.RoughnessWithin(bells[b], bells[a], Seconds.Zero, Seconds.Zero, length);
            }
        }

        return 100 * sum / _instrument.Doses.ReferenceWithin(length);
    }

    /// <summary>The pairs of partials that quarrel most in a hearing, worst first.</summary>
    public Items<Quarrel> QuarrelsOf(int hearing, int atMost)
    {
        var (from, to) = Windows[hearing];
        Strike[] strikes = [.. Sounding(from, to).Select(m => new Strike(m.Bell, m.At, Decibels.Zero))];
        return _instrument.Doses.Quarrels(strikes, from, to, atMost)
            .Select(q => new Quarrel(
                q.LowerBell.Note, q.Lower.Name, q.Lower.Frequency, q.UpperBell.Note, q.Upper.Name, q.Upper.Frequency, q.Share, q.Lasts))
            .ToItems();
    }

    /// <summary>Bells of earlier hearings, not struck again, that still ring above -20 dB of their stroke when a hearing begins.</summary>
    public Items<WrittenNote> RingingOn(int hearing)
    {
        var from = Windows[hearing].From;
        var struck = _strokes.OfHearing[hearing].Select(s => _instrument.BellAt(s.Note)).ToHashSet();
        return _moments
            .Where(m => m.Hearing < hearing && !struck.Contains(m.Bell) && Rings(_instrument.Tower.Bells[m.Bell], from - m.At))
            .Select(m => _instrument.Tower.Bells[m.Bell].Note)
            .Distinct()
            .Order()
            .ToItems();
    }

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
        for (var i = stroke.Hearing; i < _chords.Length && IsInReach(Windows[i].From - stroke.At); i++)
        {
            var to = i + 1 == _chords.Length ? Seconds.Forever : Windows[i].To - stroke.At;
            sum += _instrument.Doses.Contradiction(stroke.Bell, _chords[i], Windows[i].From - stroke.At, to);
        }

        return sum;
    }

    private static (Seconds From, Seconds To)[] WindowsOf((Slot Slot, Hearing Hearing)[] inTime, StrokesInTime strokes)
    {
        var from = inTime.Select((h, i) => strokes.OfHearing[i].Select(s => s.At.Value).Prepend((h.Hearing.At + strokes.Shift).Value).Min()).ToArray();
        return [.. inTime.Select((h, i) =>
        {
            var until = (h.Hearing.Until + strokes.Shift).Value;
            return (new Seconds(from[i]), new Seconds(i + 1 < from.Length ? Math.Min(until, from[i + 1]) : until));
        })];
    }

    /// <summary>A stroke as the clash model needs it.</summary>
    private readonly record struct Moment(int Bell, Seconds At, int Hearing);
}
