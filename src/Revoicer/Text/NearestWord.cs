namespace Revoicer.Text;

/// <summary>Finds the known word that a mistyped one most likely stands for.</summary>
internal static class NearestWord
{
    // Two slips of the finger; more would suggest words that have nothing to do with what was typed.
    private const int MostSlips = 2;

    // A longer text is no slip for a short word, and comparing it would cost time for nothing.
    private const int LongestTyped = 40;

    /// <summary>The nearest known word, or null where none is within two slips (and half the word).</summary>
    public static string? To(string typed, IEnumerable<string> known) => typed.Length > LongestTyped
        ? null
        : known
            .Select(word => (Word: word, Slips: Slips(typed, word)))
            .Where(w => w.Slips <= MostSlips && 2 * w.Slips < w.Word.Length)
            .OrderBy(w => w.Slips)
            .Select(w => w.Word)
            .FirstOrDefault();

    // Letters to put in, take out or replace (Levenshtein 1966), without regard to capitals.
    private static int Slips(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1;
                (diagonal, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + same));
            }
        }

        return row[b.Length];
    }
}
