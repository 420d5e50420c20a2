using Revoicer.Text;

namespace Revoicer.Cli.Files;

/// <summary>Tells what a reading has to say.</summary>
internal static class Told
{
    /// <summary>The value, its warnings told; null, with every problem told, where it was refused.</summary>
    public static T? Value<T>(Reading<T> reading, TextWriter error)
        where T : class
    {
        switch (reading)
        {
            case Reading<T>.Accepted accepted:
                error.Write(string.Concat(Counted.Of(accepted.Warnings.Select(warning => $"warning: {warning}"))));
                return accepted.Value;
            case Reading<T>.Refused refused:
                error.Write(string.Concat(Counted.Of(refused.Problems.Select(problem => problem.ToString()))));
                return null;
            default:
                throw new InvalidOperationException($"no such reading: {reading}");
        }
    }
}
