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

        return parts.Sorted(chord);
    }

    /// <summary>One part whose share is known, with how long it is to be heard.</summary>
    /// <param name="bells">The tower's bells.</param>
    /// <param name="tables">The tower's tables.</param>
    /// <param name="part">Which part.</param>
    /// <param name="strikes">What sounds; the strokes of other bells are passed over.</param>
    /// <param name="chord">The chord that reigns.</param>
    /// <param name="from">Start of the window.</param>
    /// <param name="to">Its end.</param>
    public static ClashPart One(
        Items<Bell> bells, DoseTables tables, RungPart part, IReadOnlyList<Strike> strikes, ChordClasses chord, Seconds from, Seconds to)
    {
        var parts = new ClashParts(bells, tables, from, to);
        var lasts = 0.0;
        if (part.HigherBell < 0)
        {
            foreach (var strike in strikes.Where(s => s.Bell == part.LowerBell))
            {
                lasts = Math.Max(lasts, parts.Contrary(strike, part.Lower, chord).Lasts);
            }

            return parts.Single((part.LowerBell, part.Lower), chord, part.Share, lasts);
        }

        var pair = tables.Pairs(part.LowerBell, part.HigherBell).ToArray().First(p => p.Lower == part.Lower && p.Higher == part.Higher);
        Strike[] higher = [.. strikes.Where(s => s.Bell == part.HigherBell)];
        foreach (var low in strikes.Where(s => s.Bell == part.LowerBell))
        {
            foreach (var high in higher)
            {
                lasts = Math.Max(lasts, parts.Rough(low, high, pair).Lasts);
            }
        }

        return parts.Pair((part.LowerBell, part.Lower, part.HigherBell, part.Higher), part.Share, lasts);
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
        foreach (var pair in _tables.Pairs(lower.Bell, higher.Bell))
        {
            Add(_rough, (lower.Bell, pair.Lower, higher.Bell, pair.Higher), Rough(lower, higher, pair));
        }
    }

    // What a pair of partials adds to the clash, and how long it is to be heard.
    private (double Dose, double Lasts) Rough(Strike lower, Strike higher, RoughPair pair)
    {
        var (earlier, later) = lower.At <= higher.At ? (lower, higher) : (higher, lower);
        var kappaLower = _tables.Kappa(lower.Bell, pair.Lower);
        var kappaHigher = _tables.Kappa(higher.Bell, pair.Higher);
        var (first, second) = earlier == lower ? (kappaLower, kappaHigher) : (kappaHigher, kappaLower);
        var dose = lower.Level.AmplitudeFactor * higher.Level.AmplitudeFactor
            * DoseTables.RoughnessWithin(pair, first, second, later.At - earlier.At, _window.From - earlier.At, _window.To - earlier.At);
        return dose > 0 ? (dose, Left(Math.Min(FallsSilent(lower, pair.Lower, later), FallsSilent(higher, pair.Higher, later)), later)) : default;
    }

    private void AddContrary(Strike strike, ChordClasses chord)
    {
        for (var i = 0; i < _bells[strike.Bell].Partials.Count; i++)
        {
            Add(_contrary, (strike.Bell, i), Contrary(strike, i, chord));
        }
    }

    // The same of a single partial against the chord.
    private (double Dose, double Lasts) Contrary(Strike strike, int partial, ChordClasses chord)
    {
        var dose = Contradiction.Weight * Math.Pow(strike.Level.AmplitudeFactor, 2)
            * _tables.ContradictionOf(strike.Bell, partial, chord, _window.From - strike.At, _window.To - strike.At);
        return dose > 0 ? (dose, Left(FallsSilent(strike, partial, strike), strike)) : default;
    }

    private static void Add<TKey>(Dictionary<TKey, (double Dose, double Lasts)> doses, TKey key, (double Dose, double Lasts) more)
        where TKey : notnull
    {
        if (more.Dose > 0)
        {
            var before = doses.GetValueOrDefault(key);
            doses[key] = (before.Dose + more.Dose, Math.Max(before.Lasts, more.Lasts));
        }
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
