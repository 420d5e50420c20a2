using Revoicer.Bells;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// How far a tower's bells carry and how bright they sound to a listener, built once per tower and immutable. Energies
/// and moments of strokes add up; <see cref="Carry"/> and <see cref="Brightness"/> turn the sums into figures. Physical
/// decay, no fade; levels are 0 dB, a caller scales a stroke of x dB by 10^(x/10).
/// </summary>
public sealed class TowerCarry
{
    private readonly HeardBell[] _bells;
    private readonly HeardBell _reference;

    /// <summary>Works out the tables of a tower.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The listener is nearer than 1 m.</exception>
    public TowerCarry(Tower tower, Listener listener)
    {
        if (!(listener.Distance.Value >= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(listener), listener.Distance.Value, "a listener stands 1 m or more away");
        }

        _bells = [.. tower.Bells.Select(b => new HeardBell(b, listener))];
        _reference = new HeardBell(Reference.Bell(Music.StrikeNote.AtMidi(60), tower.Law), listener);
    }

    /// <summary>The A-weighted energy of a stroke at time 0 at the listener, over a window; on a scale of its own, as the moment.</summary>
    /// <param name="bell">The bell's place in <see cref="Tower.Bells"/>.</param>
    /// <param name="from">Start of the window; what lies before the stroke does not count.</param>
    /// <param name="to">End of the window; may be <see cref="Seconds.Forever"/>.</param>
    /// <exception cref="IndexOutOfRangeException">A bell the tower has not.</exception>
    public double CarryEnergy(int bell, Seconds from, Seconds to) => _bells[bell].Energy(from, to);

    /// <summary>The same energy, each partial times the binary logarithm of its frequency in Hz.</summary>
    /// <param name="bell">The bell's place in <see cref="Tower.Bells"/>.</param>
    /// <param name="from">Start of the window; what lies before the stroke does not count.</param>
    /// <param name="to">End of the window; may be <see cref="Seconds.Forever"/>.</param>
    /// <exception cref="IndexOutOfRangeException">A bell the tower has not.</exception>
    public double LogFrequency(int bell, Seconds from, Seconds to) => _bells[bell].Moment(from, to);

    /// <summary>Carry: the energy of some strokes over a time re that of one default C4 stroke over the same time.</summary>
    /// <param name="energy">The sum of the strokes' energies; 0 gives minus infinity.</param>
    /// <param name="length">The time.</param>
    public Decibels Carry(double energy, Seconds length) =>
        new(10 * Math.Log10(energy / _reference.Energy(Seconds.Zero, length)));

    /// <summary>Brightness: the mean frequency of some strokes, on a logarithmic scale.</summary>
    /// <param name="energy">The sum of their energies; positive.</param>
    /// <param name="logFrequency">The sum of their moments over the same window.</param>
    public static Hertz Brightness(double energy, double logFrequency) => new(Math.Pow(2, logFrequency / energy));

    // A bell at the listener: per partial the power just after the stroke, kappa and log2 of the frequency.
    private sealed class HeardBell
    {
        private readonly (double Power, double Kappa, double Log)[] _partials;

        public HeardBell(Bell bell, Listener listener)
        {
            var octaves = Math.Log2(bell.Strike.Value / Tuning.Concert.Of(Music.StrikeNote.AtMidi(60)).Value);
            var radiated = listener.RadiatedPerOctave.Value * octaves;
            var spreading = 20 * Math.Log10(listener.Distance.Value);
            _partials = [.. bell.Partials.Select(p => (
                p.Amplitude * p.Amplitude * Power(radiated - spreading + AtEar(p.Frequency, listener)),
                p.Kappa,
                Math.Log2(p.Frequency.Value)))];
        }

        public double Energy(Seconds from, Seconds to)
        {
            var sum = 0.0;
            foreach (var (power, kappa, _) in _partials)
            {
                sum += power * Dose.Integral(kappa, kappa, Seconds.Zero, from, to);
            }

            return sum;
        }

        public double Moment(Seconds from, Seconds to)
        {
            var sum = 0.0;
            foreach (var (power, kappa, log) in _partials)
            {
                sum += log * power * Dose.Integral(kappa, kappa, Seconds.Zero, from, to);
            }

            return sum;
        }

        private static double AtEar(Hertz frequency, Listener listener) =>
            AWeighting.Of(frequency).Value - listener.Air.Loss(frequency, listener.Distance).Value;

        private static double Power(double decibels) => Math.Pow(10, decibels / 10);
    }
}
