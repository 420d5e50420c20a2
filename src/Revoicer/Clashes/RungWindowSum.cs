namespace Revoicer.Clashes;

/// <summary>Adds up the clash of one window after another; between two strokes everything dies away undisturbed.</summary>
/// <param name="tables">The tower's tables.</param>
/// <param name="largest">How many of the largest parts are wanted.</param>
internal sealed class RungWindowSum(DoseTables tables, int largest)
{
    private readonly RingSums.Rung[] _ages = [new(tables), new(tables), new(tables)];
    private readonly double[] _left = new double[tables.Count * tables.Width];
    private readonly double[] _rough = new double[tables.PairCount];
    private readonly double[] _contrary = new double[tables.Count * tables.Width];
    private readonly bool[] _sounds = new bool[tables.Count];

    /// <summary>The clash of a window.</summary>
    /// <param name="window">The window.</param>
    /// <param name="old">What still sounds of old strokes.</param>
    /// <param name="since">How long before the window's start that was added up.</param>
    /// <param name="loose">The strokes that are not among them, in order of time; those after the window are passed over.</param>
    /// <param name="units">Clash units of a raw dose.</param>
    public RungClash Of(RungWindow window, RingSums.Rung old, double since, List<RungStroke> loose, double units)
    {
        var (from, to) = (window.From.Value, window.To.Value);
        var isAlike = window.Chord == RungWindow.AllAlike;
        for (var age = 0; age < _ages.Length; age++)
        {
            _ages[age].Set(age == (isAlike ? 0 : _ages.Length - 1) ? old : null);
        }

        _ages[isAlike ? 0 : ^1].Decay(since);
        Array.Clear(_rough);
        Array.Clear(_contrary);
        Array.Clear(_sounds);
        for (var bell = 0; bell < _sounds.Length; bell++)
        {
            var cells = bell * tables.Width;
            _sounds[bell] = old.Rest.AsSpan(cells, tables.Width).ContainsAnyExcept(0.0) || old.Tune.AsSpan(cells, tables.Width).ContainsAnyExcept(0.0);
        }

        var clash = new RungClash();
        double[] cuts = [.. loose.Select(s => s.At.Value).Concat(window.Reigning.SelectMany(r => new[] { r.From.Value, r.To.Value })).Where(t => t > from && t < to).Append(to).Distinct().Order()];
        var (at, next) = (from, 0);
        foreach (var cut in cuts)
        {
            for (; next < loose.Count && loose[next].At.Value <= at; next++)
            {
                _ages[RingSums.Age(loose[next], window)].Add(loose[next], at - loose[next].At.Value);
                _sounds[loose[next].Bell] = true;
            }

            for (var cell = 0; cell < _left.Length; cell++)
            {
                _left[cell] = Math.Exp(-tables.KappaAt(cell) * (cut - at));
            }

            AddRough(clash);
            foreach (var chord in window.Reigning.Where(r => r.From.Value <= at && r.To.Value >= cut))
            {
                AddContrary(clash, chord.Classes);
            }

            foreach (var age in _ages)
            {
                age.Decay(_left);
            }

            at = cut;
        }

        clash.Largest = Largest();
        return InUnits(clash, units);
    }

    // The roughness of a stretch in which nothing is struck, each pair of partials by the older of its strokes.
    private void AddRough(RungClash clash)
    {
        var (own, before, older) = (_ages[0], _ages[1], _ages[2]);
        var (doseOwn, doseBefore, doseOlder, doseTune) = (0.0, 0.0, 0.0, 0.0);
        for (var lower = 0; lower < tables.Count; lower++)
        {
            for (var higher = _sounds[lower] ? lower + 1 : tables.Count; higher < tables.Count; higher++)
            {
                if (!_sounds[higher])
                {
                    continue;
                }

                var number = tables.FirstPair(lower, higher);
                foreach (var pair in tables.Pairs(lower, higher))
                {
                    var (i, j) = ((lower * tables.Width) + pair.Lower, (higher * tables.Width) + pair.Higher);
                    var lasts = pair.Strength * (1 - (_left[i] * _left[j])) / (tables.KappaAt(i) + tables.KappaAt(j));
                    var (r0, t0, r0j, t0j) = (own.Rest[i], own.Tune[i], own.Rest[j], own.Tune[j]);
                    var (r1, t1, r1j, t1j) = (before.Rest[i], before.Tune[i], before.Rest[j], before.Tune[j]);
                    var (r2, t2, r2j, t2j) = (older.Rest[i], older.Tune[i], older.Rest[j], older.Tune[j]);
                    var a = (r0 * (r0j + t0j)) + (t0 * r0j);
                    var b = (r1 * (r0j + t0j + r1j + t1j)) + (t1 * (r0j + r1j)) + (r0 * (r1j + t1j)) + (t0 * r1j);
                    var (r, t, rj, tj) = (r0 + r1 + r2, t0 + t1 + t2, r0j + r1j, t0j + t1j);
                    var c = (r2 * (rj + tj + r2j + t2j)) + (t2 * (rj + r2j)) + ((r0 + r1) * (r2j + t2j)) + ((t0 + t1) * r2j);
                    var d = t * (tj + t2j);
                    doseOwn += lasts * a;
                    doseBefore += lasts * b;
                    doseOlder += lasts * c;
                    doseTune += lasts * d;
                    _rough[number++] += lasts * (a + b + c + d);
                }
            }
        }

        clash.Parts[0] += doseOwn;
        clash.Parts[1] += doseBefore;
        clash.Parts[2] += doseOlder;
        clash.TuneRoughness += doseTune;
    }

    private void AddContrary(RungClash clash, ChordClasses chord)
    {
        for (var cell = 0; cell < _left.Length; cell++)
        {
            var weight = Contradiction.Weight * tables.ContradictingAt(cell, chord);
            if (weight <= 0)
            {
                continue;
            }

            var lasts = weight * (1 - (_left[cell] * _left[cell])) / (2 * tables.KappaAt(cell));
            for (var age = 0; age < _ages.Length; age++)
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
