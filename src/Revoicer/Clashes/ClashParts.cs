using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>Takes the clash of some strokes under a chord apart: the pairs of partials and the single ones that make it up.</summary>
internal sealed class ClashParts
{
    // Softer than this beside the stroke's strongest partial, a partial no longer counts as heard (dB; estimate).
    private static readonly Decibels Heard = new(-20);

    private readonly Items<Bell> _bells;
    private readonly DoseTables _tables;
    private readonly (Seconds From, Seconds To) _window;
    private readonly Dictionary<(int LowerBell, int Lower, int UpperBell, int Upper), (double Dose, double Lasts)> _rough = [];
    private readonly Dictionary<(int Bell, int Partial), (double Dose, double Lasts)> _contrary = [];

    private ClashParts(Items<Bell> bells, DoseTables tables, Seconds from, Seconds to) =>
        (_bells, _tables, _window) = (bells, tables, (from, to));

    /// <summary>All parts, largest first; their shares add up to 1 where there is any clash.</summary>
    public static IEnumerable<ClashPart> Of(
        Items<Bell> bells, DoseTables tables, IReadOnlyList<Strike> strikes, ChordClasses chord, Seconds from, Seconds to) =>
        Added(bells, tables, strikes, chord, from, to).Sorted(chord);

    private static ClashParts Added(
        Items<Bell> bells, DoseTables tables, IReadOnlyList<Strike> strikes, ChordClasses chord, Seconds from, Seconds to)
    {
        var parts = new ClashParts(bells, tables, from, to);
        for (var a = 0; a < strikes.Count; a++)
        {
            parts.AddContrary(strikes[a], chord);
            for (var b = a + 1; b < strikes.Count; b++)
            {
                parts.AddRough(strikes[a], strikes[b]);
            }
        }

        return parts;
    }

    /// <summary>One part whose share is known, with how long it is to be heard.</summary>
    /// <param name="bells">The tower's bells.</param>
    /// <param name="tables">The tower's tables.</param>
    /// <param name="part">Which part.</param>
    /// <param name="strikes">The strokes of its bells.</param>
    /// <param name="chord">The chord that reigns.</param>
    /// <param name="from">Start of the window.</param>
    /// <param name="to">Its end.</param>
    public static ClashPart One(
        Items<Bell> bells, DoseTables tables, RungPart part, IReadOnlyList<Strike> strikes, ChordClasses chord, Seconds from, Seconds to)
    {
        var parts = Added(bells, tables, strikes, chord, from, to);
        if (part.HigherBell < 0)
        {
            var single = (part.LowerBell, part.Lower);
            return parts.Single(single, chord, part.Share, parts._contrary.GetValueOrDefault(single).Lasts);
        }

        var pair = (part.LowerBell, part.Lower, part.HigherBell, part.Higher);
        return parts.Pair(pair, part.Share, parts._rough.GetValueOrDefault(pair).Lasts);
    }

    private IEnumerable<ClashPart> Sorted(ChordClasses chord)
    {
        var whole = _rough.Values.Sum(d => d.Dose) + _contrary.Values.Sum(d => d.Dose);
        var rough = _rough.OrderBy(d => d.Key).Select(d => (ClashPart)Pair(d.Key, d.Value.Dose / whole, d.Value.Lasts));
        var contrary = _contrary.OrderBy(d => d.Key).Select(d => (ClashPart)Single(d.Key, chord, d.Value.Dose / whole, d.Value.Lasts));
        return rough.Concat(contrary).OrderByDescending(p => p.Share);
    }

    private void AddRough(Strike a, Strike b)
    {
        if (a.Bell == b.Bell)
        {
            return;
        }

        var (lower, higher) = a.Bell < b.Bell ? (a, b) : (b, a);
        var (earlier, later) = lower.At <= higher.At ? (lower, higher) : (higher, lower);
        var delay = later.At - earlier.At;
        var scale = lower.Level.AmplitudeFactor * higher.Level.AmplitudeFactor;
        foreach (var pair in _tables.Pairs(lower.Bell, higher.Bell))
        {
            var kappaLower = _tables.Kappa(lower.Bell, pair.Lower);
            var kappaHigher = _tables.Kappa(higher.Bell, pair.Higher);
            var (first, second) = earlier == lower ? (kappaLower, kappaHigher) : (kappaHigher, kappaLower);
            var dose = scale
                * DoseTables.RoughnessWithin(pair, first, second, delay, _window.From - earlier.At, _window.To - earlier.At);
            if (dose > 0)
            {
                var lasts = Math.Min(FallsSilent(lower, pair.Lower, later), FallsSilent(higher, pair.Higher, later));
                Add(_rough, (lower.Bell, pair.Lower, higher.Bell, pair.Higher), dose, Left(lasts, later));
            }
        }
    }

    private void AddContrary(Strike strike, ChordClasses chord)
    {
        var scale = Contradiction.Weight * Math.Pow(strike.Level.AmplitudeFactor, 2);
        for (var i = 0; i < _bells[strike.Bell].Partials.Count; i++)
        {
            var dose = scale * _tables.ContradictionOf(strike.Bell, i, chord, _window.From - strike.At, _window.To - strike.At);
            if (dose > 0)
            {
                Add(_contrary, (strike.Bell, i), dose, Left(FallsSilent(strike, i, strike), strike));
            }
        }
    }

    private static void Add<TKey>(Dictionary<TKey, (double Dose, double Lasts)> doses, TKey key, double dose, double lasts)
        where TKey : notnull
    {
        var before = doses.GetValueOrDefault(key);
        doses[key] = (before.Dose + dose, Math.Max(before.Lasts, lasts));
    }

    // What has rung on into the window has been heard before; only what is left of it there is of interest.
    private double Left(double end, Strike later) => Math.Max(0, end - Math.Max(later.At.Value, _window.From.Value));

    // When a partial falls below the mark of a stroke; before its own stroke where it never reaches it.
    private double FallsSilent(Strike strike, int partial, Strike mark)
    {
        var loudest = _bells[mark.Bell].Partials.Max(p => p.Amplitude) * mark.Level.AmplitudeFactor * Heard.AmplitudeFactor;
        var own = _bells[strike.Bell].Partials[partial];
        return strike.At.Value + (Math.Log(own.Amplitude * strike.Level.AmplitudeFactor / loudest) / own.Kappa);
    }

    private RoughPartials Pair((int LowerBell, int Lower, int UpperBell, int Upper) key, double share, double lasts)
    {
        var first = (Bell: _bells[key.LowerBell], Partial: _bells[key.LowerBell].Partials[key.Lower]);
        var second = (Bell: _bells[key.UpperBell], Partial: _bells[key.UpperBell].Partials[key.Upper]);
        var (low, high) = first.Partial.Frequency.Value <= second.Partial.Frequency.Value ? (first, second) : (second, first);
        return new RoughPartials(low.Bell, low.Partial, high.Bell, high.Partial, share, new Seconds(lasts));
    }

    private ContraryPartial Single((int Bell, int Partial) key, ChordClasses chord, double share, double lasts)
    {
        var bell = _bells[key.Bell];
        var partial = bell.Partials[key.Partial];
        var sounds = Contradiction.ClassOf(bell, partial.Frequency).Class;
        return new ContraryPartial(bell, partial, sounds, Contradiction.Beside(sounds, chord)!.Value, share, new Seconds(lasts));
    }
}
