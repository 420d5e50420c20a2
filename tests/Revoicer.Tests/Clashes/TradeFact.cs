using Revoicer.Bells;

namespace Revoicer.Tests.Clashes;

/// <summary>Something that players of bells hold for true (common practice, no source), as a question to a tower's bells.</summary>
/// <param name="Words">The fact.</param>
/// <param name="Lowest">The lowest strike note (MIDI) of which it speaks.</param>
/// <param name="Highest">The highest.</param>
/// <param name="Above">The bells it needs, in semitones above that one.</param>
/// <param name="HoldsAt">Whether it holds at a strike note.</param>
internal sealed record TradeFact(string Words, int Lowest, int Highest, int[] Above, Func<FactBells, int, bool> HoldsAt)
{
    // Strike notes: bass G3 to G4, all registers from G3 up, upper registers C5 to C6.
    private const int G3 = 55;
    private const int G4 = 67;
    private const int C5 = 72;
    private const int C6 = 84;
    private const int Top = 127;

    /// <summary>The facts. What is said of a bass bell is asked of every bell from strike G3 to G4.</summary>
    public static TradeFact[] All { get; } =
    [
        Bass("a big bell's tierce lasts at least eight times as long as that of the bell three octaves higher",
            [36], (b, n) => Tierce(b.Bell(n)).Decay.Value >= 8 * Tierce(b.Bell(n + 36)).Decay.Value),
        Bass("the tierce has a larger share of the first 2 s of a big bell than of the bell three octaves higher",
            [36], (b, n) => TierceShare(b.Bell(n)) > TierceShare(b.Bell(n + 36))),
        Bass("at the stroke a big bell's tierce is louder than its hum and its prime",
            [], (b, n) => b.Bell(n).Partials.Where(p => p.Name is "hum" or "prime").All(p => p.Amplitude < Tierce(b.Bell(n)).Amplitude)),
        Bass("a big bell's tierce outlasts every partial above it",
            [], (b, n) => Higher(b.Bell(n), Tierce(b.Bell(n))).All(p => p.Decay < Tierce(b.Bell(n)).Decay)),
        Bass("the partial near the major tenth dies away at least twice as fast as the tierce, and so do all above it",
            [], (b, n) => NearTenth(b.Bell(n)) is { } tenth
                && Higher(b.Bell(n), tenth).Append(tenth).All(p => 2 * p.Decay.Value <= Tierce(b.Bell(n)).Decay.Value)),
        Bass("a close major triad clashes at least four times as much in the bass as three octaves higher",
            [4, 7, 36, 40, 43], (b, n) => b.Major(n, 0, 4, 7) >= 4 * b.Major(n + 36, 0, 4, 7)),
        Bass("a close major triad clashes less with its root an octave higher, a sixth above the third",
            [4, 7, 12], (b, n) => b.Major(n, 4, 7, 12) < b.Major(n, 0, 4, 7)),
        Bass("a close major triad clashes more with its third an octave lower",
            [-8, 4, 7], (b, n) => b.Major(n, -8, 0, 7) > b.Major(n, 0, 4, 7)),
        Bass("root, fifth and tenth clash less than the close major triad",
            [4, 7, 16], (b, n) => b.Major(n, 0, 7, 16) < b.Major(n, 0, 4, 7)),
        Everywhere("a seventeenth clashes less than half as much as a third",
            [4, 28], (b, n) => b.Major(n, 0, 28) < b.Major(n, 0, 4) / 2),
        Everywhere("struck one after another the tones of a close triad clash less, the more the further apart",
            [4, 7], (b, n) => b.Rolled(n, 0.3) < b.Rolled(n, 0.06) && b.Rolled(n, 0.06) < b.Rolled(n, 0)),
        Bass("in close root position a minor triad clashes less than the major triad on its root",
            [3, 4, 7], (b, n) => b.Minor(n, 0, 3, 7) < b.Major(n, 0, 4, 7)),
        Bass("in open root position a minor triad clashes less than the major triad on its root",
            [7, 15, 16], (b, n) => b.Minor(n, 0, 7, 15) < b.Major(n, 0, 7, 16)),
        Bass("a fifth above a bass bell clashes less an octave higher, as a twelfth",
            [7, 19], (b, n) => b.Major(n, 0, 19) < b.Major(n, 0, 7)),
        Bass("a major sixth above a bass bell clashes less an octave higher, as a thirteenth",
            [9, 21], (b, n) => b.Major(n - 7, 7, 28) < b.Major(n - 7, 7, 16)),
        Bass("on two bells fourth, tritone, fifth, major sixth and octave clash less than the major third",
            [4, 5, 6, 7, 9, 12], (b, n) => new[] { 5, 6, 7, 9, 12 }.All(i => b.Two(n, i) < b.Two(n, 4))),
        Bass("on two bells the major sixth clashes less than the minor",
            [8, 9], (b, n) => b.Two(n, 9) < b.Two(n, 8)),
        Bass("a tenth clashes less than a third",
            [4, 16], (b, n) => b.Major(n, 0, 16) < b.Major(n, 0, 4)),
        Upper("from strike C5 to C6 a tenth is about as rough as a third: 0.9 to 1.5 of it",
            [4, 16], (b, n) => b.Two(n, 16) / b.Two(n, 4) is > 0.9 and < 1.5),
        Upper("from strike C5 to C6 sixth, twelfth and seventeenth are smoother than a tenth",
            [9, 16, 19, 28], (b, n) => new[] { 9, 19, 28 }.All(i => b.Two(n, i) < b.Two(n, 16))),
    ];

    /// <summary>The strike notes at which a tower can be asked.</summary>
    public IEnumerable<int> Places(FactBells bells) => Enumerable.Range(Lowest, Highest - Lowest + 1)
        .Where(n => bells.Has(n) && Above.All(a => bells.Has(n + a)));

    public override string ToString() => Words;

    private static TradeFact Bass(string words, int[] above, Func<FactBells, int, bool> holdsAt) => new(words, G3, G4, above, holdsAt);

    private static TradeFact Everywhere(string words, int[] above, Func<FactBells, int, bool> holdsAt) => new(words, G3, Top, above, holdsAt);

    private static TradeFact Upper(string words, int[] above, Func<FactBells, int, bool> holdsAt) => new(words, C5, C6, above, holdsAt);

    private static Partial Tierce(Bell bell) => bell.Partials.Single(p => p.Name == "tierce");

    private static IEnumerable<Partial> Higher(Bell bell, Partial than) => bell.Partials.Where(p => p.Frequency.Value > than.Frequency.Value);

    // Within a quarter tone of the just major tenth, 5/2.
    private static Partial? NearTenth(Bell bell) =>
        bell.Partials.FirstOrDefault(p => Math.Abs(12 * Math.Log2(p.Frequency.Value / bell.Strike.Value / 2.5)) < 0.5);

    private static double TierceShare(Bell bell) => Energy(Tierce(bell)) / bell.Partials.Sum(Energy);

    // Of the first two seconds: the integral of A^2 exp(-2 kappa t).
    private static double Energy(Partial p) => p.Amplitude * p.Amplitude * (1 - Math.Exp(-4 * p.Kappa)) / (2 * p.Kappa);
}
