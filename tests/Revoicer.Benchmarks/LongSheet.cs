using System.Globalization;
using System.Text;

namespace Revoicer.Benchmarks;

/// <summary>
/// Writes long sheets of chance chords, alike for the same seed: a grid of chords, or a tune with chords over it. Nothing is
/// repeated, so every chord is one more slot.
/// </summary>
internal static class LongSheet
{
    private const int BarsInLine = 4;
    private const int QuartersInBar = 4;

    private static readonly string[] Roots = ["C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"];

    // A song has more plain chords than coloured ones.
    private static readonly string[] Kinds = ["", "", "", "m", "m", "m", "7", "7", "m7", "maj7", "m6", "7sus4", "m7b5", "dim7"];

    // The scale of C from G4 to D6, in the letters of ABC.
    private static readonly string[] Scale = ["G", "A", "B", "c", "d", "e", "f", "g", "a", "b", "c'", "d'"];

    /// <summary>Prints a sheet with so many chords.</summary>
    public static int Print(int chords, int seed, bool withTune)
    {
        Console.Write(Of(chords, seed, withTune));
        return 0;
    }

    /// <summary>The text of a sheet: ABC where it has a tune, else a chord grid.</summary>
    /// <param name="chords">How many chords; every third bar or so has two of them.</param>
    /// <param name="seed">What chance begins with.</param>
    /// <param name="withTune">Whether a tune lies over them.</param>
    public static string Of(int chords, int seed, bool withTune)
    {
        var chance = new Random(seed);
        var text = new StringBuilder(withTune
            ? string.Create(CultureInfo.InvariantCulture, $"X:1\nT:{chords} chords\nM:4/4\nL:1/4\nQ:1/4=96\nK:C\n")
            : string.Create(CultureInfo.InvariantCulture, $"title: {chords} chords\nkey: C\ntime: 4/4\ntempo: 96\n\n| "));
        var (left, place) = (chords, Scale.Length / 2);
        for (var bar = 1; left > 0; bar++)
        {
            string[] symbols = left > 1 && chance.Next(3) == 0 ? [Symbol(chance), Symbol(chance)] : [Symbol(chance)];
            left -= symbols.Length;
            text.Append(withTune ? TuneBar(symbols, chance, ref place) : string.Join(" ", symbols));
            text.Append((left == 0, bar % (2 * BarsInLine) == 0, bar % BarsInLine == 0, withTune) switch
            {
                (true, _, _, _) => " |]\n",
                (_, true, _, true) => " ||\n",
                (_, true, _, false) => " ||\n| ",
                (_, _, true, true) => " |\n",
                (_, _, true, false) => " |\n| ",
                _ => " | ",
            });
        }

        return text.ToString();
    }

    private static string Symbol(Random chance) => Roots[chance.Next(Roots.Length)] + Kinds[chance.Next(Kinds.Length)];

    // Quarters that go up or down by at most two steps.
    private static string TuneBar(string[] symbols, Random chance, ref int place)
    {
        var bar = new StringBuilder();
        for (var quarter = 0; quarter < QuartersInBar; quarter++)
        {
            place = Math.Clamp(place + chance.Next(-2, 3), 0, Scale.Length - 1);
            var symbol = quarter * symbols.Length % QuartersInBar == 0 ? $"\"{symbols[quarter * symbols.Length / QuartersInBar]}\"" : "";
            bar.Append(symbol).Append(Scale[place]);
        }

        return bar.ToString();
    }
}
