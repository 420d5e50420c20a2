namespace Revoicer.Pictures;

/// <summary>A scale from 0 in round steps: 1, 2 or 5 times a power of ten.</summary>
/// <param name="Step">The step; positive.</param>
/// <param name="Steps">How many there are, at least one.</param>
internal sealed record Scale(double Step, int Steps)
{
    /// <summary>Its upper end.</summary>
    public double Top => Step * Steps;

    /// <summary>Its levels, 0 first.</summary>
    public IEnumerable<double> Levels => Enumerable.Range(0, Steps + 1).Select(i => Math.Round(i * Step, 9));

    /// <summary>The scale with the smallest steps that holds some values in a number of steps.</summary>
    /// <param name="most">The largest value; where it is not positive, the scale goes to 1.</param>
    /// <param name="steps">How many steps there may be.</param>
    public static Scale For(double most, int steps)
    {
        if (!(most > 0))
        {
            return new Scale(1, 1);
        }

        var power = Math.Pow(10, Math.Floor(Math.Log10(most / steps)));
        var step = new[] { 1, 2, 5, 10 }.Select(times => times * power).First(s => most <= s * steps * (1 + 1e-9));
        return new Scale(step, Math.Max(1, (int)Math.Ceiling((most / step) - 1e-9)));
    }
}
