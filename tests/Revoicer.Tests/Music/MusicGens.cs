using FsCheck;
using FsCheck.Fluent;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Tests.Music;

/// <summary>Generators for musical time and names.</summary>
internal static class MusicGens
{
    // Within what a sheet can ask for: some thousand bars, divided finely.
    public static Arbitrary<Beats> AnyBeats() => (
        from numerator in Gen.Choose(-100_000, 100_000)
        from denominator in Gen.OneOf(Gen.Elements(1, 2, 3, 4, 6, 8, 12, 16), Gen.Choose(1, 5_000))
        select Beats.OfQuarters(numerator, denominator)).ToArbitrary();

    public static Arbitrary<NoteName> Names() => (
        from letter in Gen.Elements(Enum.GetValues<Letter>())
        from alteration in Gen.Choose(-2, 2)
        select new NoteName(letter, alteration)).ToArbitrary();

    public static Arbitrary<TempoMap> TempoMaps() => (
        from first in Speed
        from later in Later.ListOf()
        select new TempoMap(
            later.GroupBy(c => c.From)
                .Select(same => same.First())
                .Prepend(new TempoChange(Beats.Zero, first))
                .OrderBy(c => c.From)
                .ToItems())).ToArbitrary();

    private static Gen<Tempo> Speed =>
        from unit in Gen.Elements(Beats.OfQuarters(1), Beats.OfQuarters(3, 2), Beats.OfQuarters(2))
        from perMinute in Gen.Choose(20, 300)
        select new Tempo(unit, perMinute);

    private static Gen<TempoChange> Later =>
        from place in Gen.Choose(1, 200)
        from speed in Speed
        select new TempoChange(Beats.OfQuarters(place, 2), speed);
}
