using FsCheck;
using FsCheck.Fluent;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Tests.Clashes;

/// <summary>Two random bells, a chord, a delay between the strokes and a window counted from the first.</summary>
public sealed record Scene(Tower Tower, ChordClasses Chord, Seconds Delay, Seconds From, Seconds To);

/// <summary>Generators for the clash model.</summary>
internal static class ClashGens
{
    public static Arbitrary<Scene> Scenes() => (
        from lower in BellOf(60)
        from higher in BellOf(67)
        from chord in Chords
        from delay in Between(0, 3)
        from one in Between(0, 4)
        from two in Between(0, 4)
        select new Scene(
            ClashBells.Of([lower, higher]),
            chord,
            new Seconds(delay),
            new Seconds(Math.Min(one, two)),
            new Seconds(Math.Max(one, two)))).ToArbitrary();

    // Partials lie within two octaves, so that many pairs are rough; decays from a tenth of a second to a minute.
    private static Gen<Bell> BellOf(int strikeMidi) =>
        from strike in Between(200, 500)
        from partials in PartialOf.ListOf(4)
        select new Bell(
            WrittenNote.AtMidi(strikeMidi - 12),
            StrikeNote.AtMidi(strikeMidi),
            new Hertz(strike),
            partials.OrderBy(p => p.Frequency.Value).ToItems(),
            IsMeasured: true);

    private static Gen<Partial> PartialOf =>
        from hertz in Between(200, 800)
        from amplitude in Between(0, 2)
        from decay in Between(-1, 1.8)
        select new Partial("partial", new Hertz(hertz), amplitude, new Seconds(Math.Pow(10, decay)));

    private static Gen<ChordClasses> Chords =>
        from root in Gen.Choose(0, 11)
        from third in Gen.Choose(3, 4)
        from fifth in Gen.Choose(6, 8)
        from hasThird in Gen.Elements(true, false)
        select new ChordClasses(
            PitchClassSet.Of([PitchClass.Of(root), PitchClass.Of(root + third), PitchClass.Of(root + fifth)]),
            hasThird ? PitchClass.Of(root + third) : null);

    private static Gen<double> Between(double lowest, double highest) =>
        Gen.Choose(0, 1_000_000).Select(n => lowest + ((highest - lowest) * n / 1e6));
}
