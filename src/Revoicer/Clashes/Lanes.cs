using System.Numerics;

namespace Revoicer.Clashes;

/// <summary>
/// Sums in the machine's vectors: each is added up in the order of its summands, one sum a lane, so that it does not depend on
/// how wide those vectors are.
/// </summary>
internal static class Lanes
{
    /// <summary>Adds a factor times some values to as many sums.</summary>
    public static void AddTimes(double factor, ReadOnlySpan<double> values, Span<double> sums)
    {
        var wide = values.Length - (values.Length % Vector<double>.Count);
        for (var i = 0; i < wide; i += Vector<double>.Count)
        {
            (new Vector<double>(sums[i..]) + (factor * new Vector<double>(values[i..]))).CopyTo(sums[i..]);
        }

        for (var i = wide; i < values.Length; i++)
        {
            sums[i] += factor * values[i];
        }
    }
}
