using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// The clash of the strokes of a piece over many stretches of it, in time that grows with the strokes and not with their
/// pairs. All partials of one kind (a bell's hum, its prime, ...) die away alike, and a dose is a product of two amplitudes
/// (of one with itself for contradiction): so what still sounds of all strokes of a bell is added up, partial by partial,
/// before it is multiplied. That is exact: no pair is left out, however long ago its strokes.
/// </summary>
/// <param name="tables">The tower's tables.</param>
/// <param name="units">Clash units of a raw dose.</param>
/// <param name="strokes">The strokes, in order of time.</param>
internal sealed class RingSums(DoseTables tables, double units, RungStroke[] strokes)
{
    private const int Ages = 3;

    // Windows are shared among the cores in parts of at least so many, and in so many parts at most, as each walks from the start.
    private const int PartOf = 256;
    private const int MostParts = 4;

    // Far below a rounding of any sum that a stroke of touch 1 is in (2^-53 of it). Smaller numbers would slow the machine.
    private const double Nothing = 1e-60;

    private readonly int _cells = tables.Count * tables.Width;

    /// <summary>The clash of each window.</summary>
    /// <param name="windows">The windows; their starts may lie a roll's length out of order.</param>
    /// <param name="largest">How many of the largest parts are wanted.</param>
    /// <param name="cancel">Stops the work.</param>
    public RungClash[] Of(IReadOnlyList<RungWindow> windows, int largest, CancellationToken cancel)
    {
        // No later window begins before this.
        var open = new double[windows.Count];
        for (var i = windows.Count - 1; i >= 0; i--)
        {
            open[i] = Math.Min(windows[i].From.Value, i + 1 < windows.Count ? open[i + 1] : double.PositiveInfinity);
        }

        var found = new RungClash[windows.Count];
        var parts = Math.Clamp(windows.Count / PartOf, 1, MostParts);
        Parallel.For(0, parts, new ParallelOptions { CancellationToken = cancel }, part =>
            Fill(found, windows, open, windows.Count * part / parts, windows.Count * (part + 1) / parts, largest, cancel));
        return found;
    }

    // The windows from one up to another. What was struck before is added up from the start on as it would be for all of them,
    // so that the parts do not show.
    private void Fill(RungClash[] found, IReadOnlyList<RungWindow> windows, double[] open, int first, int end, int largest, CancellationToken cancel)
    {
        // What was struck for chords that are old for this window and all later ones, added up at one time.
        var (old, decay) = (new Rung(tables), new Decay(tables));
        var loose = new List<RungStroke>();
        var (next, at) = (0, 0.0);
        var window = new RungWindowSum(tables, largest);
        for (var i = 0; i < end; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var (from, to, chord) = (windows[i].From.Value, windows[i].To.Value, windows[i].Chord);
            while (next < strokes.Length && strokes[next].At.Value < to)
            {
                loose.Add(strokes[next++]);
            }

            if (open[i] > at)
            {
                old.Fade(decay.After(open[i] - at));
            }

            at = open[i];
            loose.RemoveAll(s =>
            {
                var isOld = s.At.Value <= at && (chord == RungWindow.AllAlike || s.Chord <= chord - 2);
                if (isOld)
                {
                    old.Add(s, at - s.At.Value);
                }

                return isOld;
            });
            if (i >= first)
            {
                found[i] = window.Of(windows[i], old, from - at, loose, units);
            }
        }
    }

    /// <summary>
    /// The roughness that each stroke adds with all that were struck before it, until all has died away: with all but the
    /// tune with itself, and that of the tune with itself.
    /// </summary>
    public (double Others, double Tune)[] Added(CancellationToken cancel)
    {
        var (rest, tune) = (new double[_cells], new double[_cells]);
        var added = new (double, double)[strokes.Length];
        var (decay, at) = (new Decay(tables), 0.0);
        for (var i = 0; i < strokes.Length; i++)
        {
            var stroke = strokes[i];
            if (stroke.At.Value > at)
            {
                cancel.ThrowIfCancellationRequested();
                var left = decay.After(stroke.At.Value - at);
                for (var cell = 0; cell < _cells; cell++)
                {
                    rest[cell] = Left(rest[cell] * left[cell]);
                    tune[cell] = Left(tune[cell] * left[cell]);
                }

                at = stroke.At.Value;
            }

            var (withRest, withTune) = (tables.Onsets(rest, stroke.Bell), tables.Onsets(tune, stroke.Bell));
            added[i] = stroke.IsTune
                ? (units * stroke.Touch * withRest, units * stroke.Touch * withTune)
                : (units * stroke.Touch * (withRest + withTune), 0);
            var struck = stroke.IsTune ? tune : rest;
            for (var partial = 0; partial < tables.Width; partial++)
            {
                struck[(stroke.Bell * tables.Width) + partial] += tables.IsPartial(stroke.Bell, partial) ? stroke.Touch : 0;
            }
        }

        return added;
    }

    private static double Left(double amplitude) => amplitude < Nothing ? 0 : amplitude;

    /// <summary>What sounds of some strokes, added up: amplitudes and energies, each partial's at its stroke being 1.</summary>
    internal sealed class Rung(DoseTables tables)
    {
        public double[] Rest { get; } = new double[tables.Count * tables.Width];

        public double[] Tune { get; } = new double[tables.Count * tables.Width];

        public double[] RestEnergy { get; } = new double[tables.Count * tables.Width];

        public double[] TuneEnergy { get; } = new double[tables.Count * tables.Width];

        public bool Sounds(int bell)
        {
            var cells = bell * tables.Width;
            return Rest.AsSpan(cells, tables.Width).ContainsAnyExcept(0.0) || Tune.AsSpan(cells, tables.Width).ContainsAnyExcept(0.0);
        }

        public void Fade(double[] left)
        {
            for (var cell = 0; cell < left.Length; cell++)
            {
                Rest[cell] = Left(Rest[cell] * left[cell]);
                Tune[cell] = Left(Tune[cell] * left[cell]);
                RestEnergy[cell] = Left(RestEnergy[cell] * left[cell] * left[cell]);
                TuneEnergy[cell] = Left(TuneEnergy[cell] * left[cell] * left[cell]);
            }
        }

        public void Add(RungStroke stroke, double ago)
        {
            var (amplitudes, energies) = stroke.IsTune ? (Tune, TuneEnergy) : (Rest, RestEnergy);
            for (var partial = 0; partial < tables.Width; partial++)
            {
                var cell = (stroke.Bell * tables.Width) + partial;
                var amplitude = !tables.IsPartial(stroke.Bell, partial) ? 0 : stroke.Touch * (ago > 0 ? Math.Exp(-tables.KappaAt(cell) * ago) : 1);
                amplitudes[cell] += amplitude;
                energies[cell] += amplitude * amplitude;
            }
        }

        public void Set(Rung? other)
        {
            if (other is null)
            {
                Array.Clear(Rest);
                Array.Clear(Tune);
                Array.Clear(RestEnergy);
                Array.Clear(TuneEnergy);
                return;
            }

            other.Rest.CopyTo(Rest, 0);
            other.Tune.CopyTo(Tune, 0);
            other.RestEnergy.CopyTo(RestEnergy, 0);
            other.TuneEnergy.CopyTo(TuneEnergy, 0);
        }
    }

    /// <summary>How old a stroke is for a window: 0 for the chord's own (and later), 1 for the chord before, 2 for older ones.</summary>
    internal static int Age(RungStroke stroke, RungWindow window) =>
        window.Chord == RungWindow.AllAlike ? 0 : Math.Clamp(window.Chord - stroke.Chord, 0, Ages - 1);
}
