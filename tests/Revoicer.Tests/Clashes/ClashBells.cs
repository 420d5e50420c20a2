using System.Globalization;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Tests.Clashes;

/// <summary>Towers and sums of strokes for the tests of the clash model.</summary>
internal static class ClashBells
{
    /// <summary>Default bells on strike notes 40..112, A4 = 440 Hz; the bell of strike note n stands at place n - 40.</summary>
    public static Tower Wide { get; } = Of(Enumerable.Range(40, 73).Select(Reference.Default));

    public static int Place(int strikeMidi) => strikeMidi - 40;

    public static Tower Of(IEnumerable<Bell> bells)
    {
        var list = bells.ToItems();
        return new Tower("test", list, list[0].Note, list[^1].Note, new Transposition(12), []);
    }

    /// <summary>D and C of strokes over a window, in clash units; every pair of strokes once.</summary>
    public static (double Roughness, double Contradiction) Clash(
        TowerDoses doses, IReadOnlyList<Strike> strikes, ChordClasses chord, Seconds from, Seconds to)
    {
        var (roughness, contradiction) = (0.0, 0.0);
        for (var i = 0; i < strikes.Count; i++)
        {
            var a = strikes[i];
            contradiction += Math.Pow(a.Level.AmplitudeFactor, 2)
                * doses.Contradiction(a.Bell, chord, from - a.At, to - a.At);
            foreach (var b in strikes.Skip(i + 1))
            {
                var (first, second) = a.At <= b.At ? (a, b) : (b, a);
                roughness += a.Level.AmplitudeFactor * b.Level.AmplitudeFactor * doses.RoughnessWithin(
                    first.Bell, second.Bell, second.At - first.At, from - first.At, to - first.At);
            }
        }

        return (roughness, contradiction);
    }

    /// <summary>"55@0 59@0.3": strike notes at times in seconds.</summary>
    public static Items<Strike> Strikes(string text) => text.Split(' ')
        .Select(s => s.Split('@'))
        .Select(s => new Strike(
            Place(int.Parse(s[0], CultureInfo.InvariantCulture)),
            new Seconds(double.Parse(s[1], CultureInfo.InvariantCulture)),
            Decibels.Zero))
        .ToItems();

    /// <summary>"7 11* 2": pitch classes, the third starred.</summary>
    public static ChordClasses Chord(string text)
    {
        var classes = text.Split(' ').ToList();
        var third = classes.FirstOrDefault(c => c.EndsWith('*'));
        return new ChordClasses(PitchClassSet.Of(classes.Select(Class)), third is null ? null : Class(third));

        static PitchClass Class(string c) => PitchClass.Of(int.Parse(c.TrimEnd('*'), CultureInfo.InvariantCulture));
    }
}
