using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// What of the clash model depends on the bells alone, worked out once: for every pair of bells the pairs of partials
/// that are rough together, for every partial its pitch class. Doses here are raw (seconds, for amplitudes on the
/// tower's scale); <see cref="TowerDoses"/> puts them into clash units.
/// </summary>
internal sealed class DoseTables
{
    private readonly Items<Bell> _bells;
    private readonly double _fade;
    private readonly int _width;

    // Flat, bell x partial: kappa with fade; the square of the amplitude times v; the pitch class.
    private readonly double[] _kappa;
    private readonly double[] _contradicting;
    private readonly PitchClass[] _classes;

    // Pairs of partials with g > 0 of bells a < b: those of (a, b) stand from _first[a * n + b] to the next start.
    private readonly int[] _first;
    private readonly RoughPair[] _pairs;

    // Flat, earlier x partial of the earlier x later: the sum over the later bell's partials of g A A / (kappa + kappa).
    private readonly double[] _onset;

    public DoseTables(Items<Bell> bells, Fade fade)
    {
        _bells = bells;
        _fade = fade.Rate;
        _width = bells.Max(b => b.Partials.Count);
        _kappa = new double[bells.Count * _width];
        _contradicting = new double[bells.Count * _width];
        _classes = new PitchClass[bells.Count * _width];
        FillPartials();

        _first = new int[(bells.Count * bells.Count) + 1];
        _pairs = FindPairs();
        _onset = new double[bells.Count * bells.Count * _width];
        FillOnsets();
    }

    /// <summary>How many bells there are.</summary>
    public int Count => _bells.Count;

    /// <summary>The pairs of partials of two bells that are rough together; the first index is the lower bell's.</summary>
    public ReadOnlySpan<RoughPair> Pairs(int lower, int higher)
    {
        var cell = (lower * Count) + higher;
        return _pairs.AsSpan(_first[cell], _first[cell + 1] - _first[cell]);
    }

    /// <summary>How many partials a bell has at most: partial i of bell b stands in cell b x width + i.</summary>
    public int Width => _width;

    /// <summary>How many pairs of partials are rough together, over all bells.</summary>
    public int PairCount => _pairs.Length;

    /// <summary>The number of the first of <see cref="Pairs"/> among the pairs of all bells.</summary>
    public int FirstPair(int lower, int higher) => _first[(lower * Count) + higher];

    /// <summary>The bells and the partials of a pair by its number.</summary>
    public (int Lower, int Higher, RoughPair Pair) PairAt(int number)
    {
        // The last pair of bells whose pairs of partials do not begin behind it; those without any begin where the next do.
        var cell = Array.BinarySearch(_first, number);
        cell = cell < 0 ? ~cell - 1 : cell;
        while (_first[cell + 1] <= number)
        {
            cell++;
        }

        return (cell / Count, cell % Count, _pairs[number]);
    }

    /// <summary>Whether a bell has a partial of that number.</summary>
    public bool IsPartial(int bell, int partial) => partial < _bells[bell].Partials.Count;

    /// <summary>kappa of the partial in a cell, fade included, in 1/s; 0 in a cell without one.</summary>
    public double KappaAt(int cell) => _kappa[cell];

    /// <summary>How far a partial that sounds with amplitude 1 times its own contradicts a chord; 0 where it does not.</summary>
    /// <param name="cell">The partial's cell.</param>
    /// <param name="weights">The weights of the chord.</param>
    public double ContradictingAt(int cell, ReadOnlySpan<double> weights) => weights[_classes[cell].Value] * _contradicting[cell];

    /// <summary>D of a stroke of touch 1 with all that sounds when it is struck, until all has died away.</summary>
    /// <param name="sounding">What sounds, by cell.</param>
    /// <param name="later">The bell struck.</param>
    public double Onsets(double[] sounding, int later)
    {
        var sum = 0.0;
        for (var cell = 0; cell < sounding.Length; cell++)
        {
            sum += sounding[cell] == 0 ? 0 : sounding[cell] * _onset[(cell * Count) + later];
        }

        return sum;
    }

    /// <summary>D of two strokes from the later onset until both have died away.</summary>
    public double Roughness(int earlier, int later, Seconds delay)
    {
        var sum = 0.0;
        for (var i = 0; i < _width; i++)
        {
            var onset = _onset[Onset(earlier, i, later)];
            if (onset != 0)
            {
                sum += onset * Math.Exp(-Kappa(earlier, i) * delay.Value);
            }
        }

        return sum;
    }

    /// <summary>The same for all pairs of bells at one delay, earlier x later, times a factor.</summary>
    public void Roughness(Seconds delay, double factor, Span<double> table)
    {
        for (var earlier = 0; earlier < Count; earlier++)
        {
            var row = table.Slice(earlier * Count, Count);
            row.Clear();
            for (var i = 0; i < _width; i++)
            {
                var left = factor * Math.Exp(-Kappa(earlier, i) * delay.Value);
                Lanes.AddTimes(left, _onset.AsSpan(Onset(earlier, i, 0), Count), row);
            }
        }
    }

    /// <summary>D of two strokes over a window, in times counted from the earlier stroke.</summary>
    public double RoughnessWithin(int earlier, int later, Seconds delay, Seconds from, Seconds to)
    {
        var sum = 0.0;
        var swapped = earlier > later;
        foreach (var pair in swapped ? Pairs(later, earlier) : Pairs(earlier, later))
        {
            sum += swapped
                ? RoughnessWithin(pair, Kappa(earlier, pair.Higher), Kappa(later, pair.Lower), delay, from, to)
                : RoughnessWithin(pair, Kappa(earlier, pair.Lower), Kappa(later, pair.Higher), delay, from, to);
        }

        return sum;
    }

    /// <summary>D of one pair of partials over a window, in times counted from the earlier stroke.</summary>
    public static double RoughnessWithin(
        RoughPair pair, double kappaEarlier, double kappaLater, Seconds delay, Seconds from, Seconds to) =>
        pair.Strength * Dose.Integral(kappaEarlier, kappaLater, delay, from, to);

    /// <summary>C of one stroke at time 0 over a window.</summary>
    public double Contradiction(int bell, ChordClasses chord, Seconds from, Seconds to)
    {
        var sum = 0.0;
        for (var i = 0; i < _width; i++)
        {
            sum += ContradictionOf(bell, i, chord, from, to);
        }

        return sum;
    }

    /// <summary>C of one partial of a stroke at time 0 over a window.</summary>
    public double ContradictionOf(int bell, int partial, ChordClasses chord, Seconds from, Seconds to)
    {
        var i = (bell * _width) + partial;
        var weight = _contradicting[i] == 0 ? 0 : Clashes.Contradiction.WeightOf(_classes[i], chord);
        return weight > 0 ? weight * _contradicting[i] * Dose.Integral(_kappa[i], _kappa[i], Seconds.Zero, from, to) : 0;
    }

    /// <summary>kappa of the partial that rings longest, fade included, in 1/s.</summary>
    public double SlowestKappa => _kappa.Where(k => k > 0).Min();

    /// <summary>kappa of a partial, fade included, in 1/s.</summary>
    public double Kappa(int bell, int partial) => _kappa[(bell * _width) + partial];

    private void FillPartials()
    {
        for (var bell = 0; bell < Count; bell++)
        {
            for (var i = 0; i < _bells[bell].Partials.Count; i++)
            {
                var partial = _bells[bell].Partials[i];
                var (pitchClass, certainty) = Clashes.Contradiction.ClassOf(_bells[bell], partial.Frequency);
                var at = (bell * _width) + i;
                _kappa[at] = partial.Kappa + _fade;
                _classes[at] = pitchClass;
                _contradicting[at] = certainty * partial.Amplitude * partial.Amplitude;
            }
        }
    }

    private RoughPair[] FindPairs()
    {
        var found = new List<RoughPair>();
        for (var lower = 0; lower < Count; lower++)
        {
            for (var higher = 0; higher < Count; higher++)
            {
                if (lower < higher)
                {
                    AddPairs(lower, higher, found);
                }

                _first[(lower * Count) + higher + 1] = found.Count;
            }
        }

        return [.. found];
    }

    private void AddPairs(int lower, int higher, List<RoughPair> found)
    {
        var (low, high) = (_bells[lower].Partials, _bells[higher].Partials);
        for (var i = 0; i < low.Count; i++)
        {
            for (var j = 0; j < high.Count; j++)
            {
                var g = Clashes.Roughness.Between(low[i].Frequency, high[j].Frequency);
                if (g > 0)
                {
                    found.Add(new RoughPair(i, j, g * low[i].Amplitude * high[j].Amplitude, Kappa(lower, i) + Kappa(higher, j)));
                }
            }
        }
    }

    private void FillOnsets()
    {
        for (var lower = 0; lower < Count; lower++)
        {
            for (var higher = lower + 1; higher < Count; higher++)
            {
                foreach (var pair in Pairs(lower, higher))
                {
                    var dose = pair.Strength / pair.Rate;
                    _onset[Onset(lower, pair.Lower, higher)] += dose;
                    _onset[Onset(higher, pair.Higher, lower)] += dose;
                }
            }
        }
    }

    private int Onset(int earlier, int partial, int later) => (((earlier * _width) + partial) * Count) + later;
}
