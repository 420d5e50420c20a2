using System.Numerics;

namespace Revoicer.Clashes;

/// <summary>Adds up the clash of one window after another; between two strokes everything dies away undisturbed.</summary>
/// <param name="tables">The tower's tables.</param>
/// <param name="largest">How many of the largest parts are wanted.</param>
internal sealed class RungWindowSum(DoseTables tables, int largest)
{
    private readonly RingSums.Rung[] _ages = [new(tables), new(tables), new(tables)];
    private readonly Decay _decay = new(tables);
    private readonly double[] _rough = new double[tables.PairCount];
    private readonly double[] _contrary = new double[tables.Count * tables.Width];

    // For each bell which ages sound of it, bit k for age k.
    private readonly int[] _sounds = new int[tables.Count];

    /// <summary>The clash of a window.</summary>
    /// <param name="window">The window.</param>
    /// <param name="old">What still sounds of old strokes.</param>
    /// <param name="since">How long before the window's start that was added up.</param>
    /// <param name="loose">The strokes that are not among them, in order of time; those after the window are passed over.</param>
    /// <param name="units">Clash units of a raw dose.</param>
    public RungClash Of(RungWindow window, RingSums.Rung old, double since, List<RungStroke> loose, double units)
    {
        var (from, to) = (window.From.Value, window.To.Value);
        var oldest = window.Chord == RungWindow.AllAlike ? 0 : _ages.Length - 1;
        for (var age = 0; age <= oldest; age++)
        {
            _ages[age].Set(age == oldest ? old : null);
        }

        if (since > 0)
        {
            _ages[oldest].Fade(_decay.After(since));
        }

        Array.Clear(_rough);
        Array.Clear(_contrary);
        for (var bell = 0; bell < _sounds.Length; bell++)
        {
            _sounds[bell] = old.Sounds(bell) ? 1 << oldest : 0;
        }

        var clash = new RungClash();
        double[] cuts = [.. loose.Select(s => s.At.Value).Concat(window.Reigning.SelectMany(r => new[] { r.From.Value, r.To.Value })).Where(t => t > from && t < to).Append(to).Distinct().Order()];
        var (at, next) = (from, 0);
        foreach (var cut in cuts)
        {
            for (; next < loose.Count && loose[next].At.Value <= at; next++)
            {
                var age = RingSums.Age(loose[next], window);
                _ages[age].Add(loose[next], at - loose[next].At.Value);
                _sounds[loose[next].Bell] |= 1 << age;
            }

            var left = _decay.After(cut - at);
            AddRough(clash, left);
            foreach (var chord in window.Reigning.Where(r => r.From.Value <= at && r.To.Value >= cut))
            {
                AddContrary(clash, chord.Classes, left, oldest);
            }

            for (var age = 0; age <= oldest && cut < to; age++)
            {
                _ages[age].Fade(left);
            }

            at = cut;
        }

        clash.Largest = Largest();
        return InUnits(clash, units);
    }

    // The roughness of a stretch in which nothing is struck, each pair of partials by the older of its strokes.
    private void AddRough(RungClash clash, double[] left)
    {
        // Of the three ages, and of the tune with itself.
        Span<double> doses = stackalloc double[_ages.Length + 1];
        for (var lower = 0; lower < tables.Count; lower++)
        {
            for (var higher = _sounds[lower] > 0 ? lower + 1 : tables.Count; higher < tables.Count; higher++)
            {
                var ages = _sounds[higher] > 0 ? _sounds[lower] | _sounds[higher] : 0;
                if (BitOperations.IsPow2(ages))
                {
                    AddRough(lower, higher, BitOperations.Log2((uint)ages), left, doses);
                }
                else if (ages > 0)
                {
                    AddRough(lower, higher, left, doses);
                }
            }
        }

        for (var age = 0; age < _ages.Length; age++)
        {
            clash.Parts[age] += doses[age];
        }

        clash.TuneRoughness += doses[^1];
    }

    // That of two bells of which strokes of one age alone sound, as with most: the terms of the other ages are nothing.
    private void AddRough(int lower, int higher, int age, double[] left, Span<double> doses)
    {
        var (low, high) = (lower * tables.Width, higher * tables.Width);
        ReadOnlySpan<double> rest = _ages[age].Rest;
        ReadOnlySpan<double> tune = _ages[age].Tune;
        var (ofAge, ofTune) = (doses[age], doses[^1]);
        var number = tables.FirstPair(lower, higher);
        foreach (var pair in tables.Pairs(lower, higher))
        {
            var (i, j) = (low + pair.Lower, high + pair.Higher);
            var lasts = pair.Strength * (1 - (left[i] * left[j])) / pair.Rate;
            var some = (rest[i] * (rest[j] + tune[j])) + (tune[i] * rest[j]);
            var d = tune[i] * tune[j];
            ofAge += lasts * some;
            ofTune += lasts * d;
            _rough[number++] += lasts * (some + d);
        }

        (doses[age], doses[^1]) = (ofAge, ofTune);
    }

    // That of two bells of which strokes of several ages sound.
    private void AddRough(int lower, int higher, double[] left, Span<double> doses)
    {
        var (own, before, older) = (_ages[0], _ages[1], _ages[2]);
        var (ofOwn, ofBefore, ofOlder, ofTune) = (doses[0], doses[1], doses[2], doses[3]);
        var number = tables.FirstPair(lower, higher);
        foreach (var pair in tables.Pairs(lower, higher))
        {
            var (i, j) = ((lower * tables.Width) + pair.Lower, (higher * tables.Width) + pair.Higher);
            var lasts = pair.Strength * (1 - (left[i] * left[j])) / pair.Rate;
            var (r0, t0, r0j, t0j) = (own.Rest[i], own.Tune[i], own.Rest[j], own.Tune[j]);
            var (r1, t1, r1j, t1j) = (before.Rest[i], before.Tune[i], before.Rest[j], before.Tune[j]);
            var (r2, t2, r2j, t2j) = (older.Rest[i], older.Tune[i], older.Rest[j], older.Tune[j]);
            var a = (r0 * (r0j + t0j)) + (t0 * r0j);
            var b = (r1 * (r0j + t0j + r1j + t1j)) + (t1 * (r0j + r1j)) + (r0 * (r1j + t1j)) + (t0 * r1j);
            var (r, t, rj, tj) = (r0 + r1 + r2, t0 + t1 + t2, r0j + r1j, t0j + t1j);
            var c = (r2 * (rj + tj + r2j + t2j)) + (t2 * (rj + r2j)) + ((r0 + r1) * (r2j + t2j)) + ((t0 + t1) * r2j);
            var d = t * (tj + t2j);
            ofOwn += lasts * a;
            ofBefore += lasts * b;
            ofOlder += lasts * c;
            ofTune += lasts * d;
            _rough[number++] += lasts * (a + b + c + d);
        }

        (doses[0], doses[1], doses[2], doses[3]) = (ofOwn, ofBefore, ofOlder, ofTune);
    }

    private void AddContrary(RungClash clash, ChordClasses chord, double[] left, int oldest)
    {
        var weights = Contradiction.WeightsOf(chord);
        for (var cell = 0; cell < _contrary.Length; cell++)
        {
            var weight = Contradiction.Weight * tables.ContradictingAt(cell, weights);
            if (weight <= 0)
            {
                continue;
            }

            var lasts = weight * (1 - (left[cell] * left[cell])) / (2 * tables.KappaAt(cell));
            for (var age = 0; age <= oldest; age++)
            {
                var dose = lasts * _ages[age].RestEnergy[cell];
                clash.Parts[age] += dose;
                clash.Contradiction += dose;
                _contrary[cell] += dose;
                var ofTune = lasts * _ages[age].TuneEnergy[cell];
                clash.TuneContradiction += ofTune;
                _contrary[cell] += ofTune;
            }
        }
    }

    private RungPart[] Largest()
    {
        if (largest == 0)
        {
            return [];
        }

        var whole = _rough.Sum() + _contrary.Sum();
        var found = new List<(double Dose, int Cell, bool IsRough)>();
        Offer(_rough, isRough: true);
        Offer(_contrary, isRough: false);
        return [.. found.Select(f => Part(f.Cell, f.IsRough, f.Dose / whole))];

        void Offer(double[] doses, bool isRough)
        {
            for (var cell = 0; cell < doses.Length; cell++)
            {
                if (doses[cell] > 0 && (found.Count < largest || doses[cell] > found[^1].Dose))
                {
                    var place = found.FindIndex(f => f.Dose < doses[cell]);
                    found.Insert(place < 0 ? found.Count : place, (doses[cell], cell, isRough));
                    found.RemoveRange(Math.Min(largest, found.Count), Math.Max(0, found.Count - largest));
                }
            }
        }
    }

    private RungPart Part(int cell, bool isRough, double share)
    {
        if (!isRough)
        {
            return new RungPart(cell / tables.Width, cell % tables.Width, -1, -1, share);
        }

        var (lower, higher, pair) = tables.PairAt(cell);
        return new RungPart(lower, pair.Lower, higher, pair.Higher, share);
    }

    private static RungClash InUnits(RungClash clash, double units)
    {
        for (var age = 0; age < clash.Parts.Length; age++)
        {
            clash.Parts[age] *= units;
        }

        clash.Contradiction *= units;
        clash.TuneRoughness *= units;
        clash.TuneContradiction *= units;
        return clash;
    }
}
