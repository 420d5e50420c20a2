namespace Revoicer.Prices;

/// <summary>
/// The least total movement, in semitones, that takes one set of tones to another, every tone of both having a part;
/// where one set is larger, tones are shared. On a line the least movement never crosses voices, so a small table over
/// both sets in rising order finds it (Tymoczko, The Geometry of Musical Chords, Science 313, 2006: taxicab size).
/// </summary>
internal static class VoiceLeading
{
    /// <summary>The movement between two sets; 0 where one is empty.</summary>
    /// <param name="from">MIDI numbers, rising; at most <see cref="Most"/>.</param>
    /// <param name="to">MIDI numbers, rising; at most <see cref="Most"/>.</param>
    public static int Size(ReadOnlySpan<int> from, ReadOnlySpan<int> to)
    {
        if (from.IsEmpty || to.IsEmpty)
        {
            return 0;
        }

        // least[j] = least movement of from[..i] to to[..j], both last tones paired.
        Span<int> least = stackalloc int[Most];
        for (var i = 0; i < from.Length; i++)
        {
            var diagonal = 0;
            for (var j = 0; j < to.Length; j++)
            {
                var above = least[j];
                var before = (i, j) switch
                {
                    (0, 0) => 0,
                    (0, _) => least[j - 1],
                    (_, 0) => above,
                    _ => Math.Min(diagonal, Math.Min(above, least[j - 1])),
                };
                diagonal = above;
                least[j] = before + Math.Abs(from[i] - to[j]);
            }
        }

        return least[to.Length - 1];
    }

    /// <summary>The largest set.</summary>
    public const int Most = 8;
}
