namespace Revoicer.Tests.Oracles;

/// <summary>
/// The least movement from one set of tones to another by trying every way to pair their tones in which each has a part
/// (D. Tymoczko, The Geometry of Musical Chords, Science 313, 2006: voice leadings, measured by the taxicab).
/// </summary>
internal static class LeastMovement
{
    /// <summary>The movement in semitones; 0 where one set is empty. Together at most 20 pairs.</summary>
    public static int Of(int[] before, int[] after)
    {
        if (before.Length == 0 || after.Length == 0)
        {
            return 0;
        }

        var pairs = (from a in Enumerable.Range(0, before.Length) from b in Enumerable.Range(0, after.Length) select (a, b)).ToArray();
        var least = int.MaxValue;
        for (var some = 1; some < 1 << pairs.Length; some++)
        {
            var (leaving, arriving, size) = (0, 0, 0);
            for (var p = 0; p < pairs.Length; p++)
            {
                if ((some >> p & 1) != 0)
                {
                    leaving |= 1 << pairs[p].a;
                    arriving |= 1 << pairs[p].b;
                    size += Math.Abs(before[pairs[p].a] - after[pairs[p].b]);
                }
            }

            var allHaveAPart = leaving == (1 << before.Length) - 1 && arriving == (1 << after.Length) - 1;
            least = allHaveAPart ? Math.Min(least, size) : least;
        }

        return least;
    }
}
