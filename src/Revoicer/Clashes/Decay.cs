namespace Revoicer.Clashes;

/// <summary>What is left of every partial after some time.</summary>
/// <param name="tables">The tower's tables.</param>
internal sealed class Decay(DoseTables tables)
{
    private readonly double[] _left = new double[tables.Count * tables.Width];
    private double _seconds = double.NaN;

    /// <summary>The factors on the amplitudes, by cell; they stand until the next are asked for.</summary>
    /// <param name="seconds">How much time goes by.</param>
    public double[] After(double seconds)
    {
        // In an even rhythm the same time goes by again and again.
        if (seconds != _seconds)
        {
            for (var cell = 0; cell < _left.Length; cell++)
            {
                _left[cell] = Math.Exp(-tables.KappaAt(cell) * seconds);
            }

            _seconds = seconds;
        }

        return _left;
    }
}
