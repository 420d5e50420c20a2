using FsCheck.Xunit;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Clashes;

public sealed class ClashPartTests
{
    private static readonly TowerDoses Price = new(ClashBells.Wide, Fade.Default);

    /// <summary>
    /// In a close major third the lower bell's tierce (261.6 x 1.196 = 313 Hz) meets the upper bell's prime (330 Hz);
    /// numbers by hand from bell-law.tsv.
    /// </summary>
    [Fact]
    public void The_tierce_of_C_quarrels_most_with_the_prime_of_E()
    {
        var worst = Price.Parts(ClashBells.Strikes("60@0 64@0 67@0"), ClashBells.Chord("0 4* 7"), Seconds.Zero, Seconds.Forever, 3)
            .OfType<RoughPartials>().First();

        Assert.Equal(("tierce", "prime"), (worst.Lower.Name, worst.Upper.Name));
        Assert.Equal(("C4", "E4"), (worst.LowerBell.StrikeNote.ToString(), worst.UpperBell.StrikeNote.ToString()));
        Assert.Equal(("313 Hz", "330 Hz"), (worst.Lower.Frequency.ToString(), worst.Upper.Frequency.ToString()));
    }

    /// <summary>
    /// Of two bells struck together, a partial L dB below the later bell's strongest crosses -20 dB after
    /// T60 (20 - L) / 60; the prime of E4 (interpolated -5.67 dB) falls there before the tierce of C4 does.
    /// </summary>
    [Fact]
    public void A_quarrel_lasts_until_the_first_of_both_falls_below_20_dB()
    {
        var worst = Assert.IsType<RoughPartials>(Price.Parts(ClashBells.Strikes("60@1 64@1"), ChordClasses.None, new Seconds(1), new Seconds(2), 1)[0]);
        var level = -5 - (2 * 4 / 12.0);

        Assert.Equal(worst.Upper.Decay.Value * (20 + level) / 60, worst.Lasts.Value, 1e-9);
    }

    /// <summary>Of two old bells only what is left when the window begins is told: as much less as the window is later.</summary>
    [Fact]
    public void A_quarrel_of_two_old_bells_lasts_from_the_start_of_the_window()
    {
        Strike[] strikes = [.. ClashBells.Strikes("60@0 64@0.5")];
        var whole = Lasts(0.5);

        Assert.InRange(whole, 1, 10);
        Assert.Equal(whole, Lasts(0), 1e-9);
        Assert.Equal(whole - 0.75, Lasts(1.25), 1e-9);
        Assert.Equal(0, Lasts(0.5 + whole + 0.25));

        double Lasts(double from) => Price.Parts(strikes, ChordClasses.None, new Seconds(from), Seconds.Forever, int.MaxValue)
            .OfType<RoughPartials>().Single(q => (q.Lower.Name, q.Upper.Name) == ("tierce", "prime")).Lasts.Value;
    }

    /// <summary>
    /// Both doses are sums over the parts by their definition (design of the model, docs/clash-model.md), so the parts must
    /// add up to each and their shares to 1.
    /// </summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool The_parts_add_up_to_the_whole_in_falling_order(Scene s)
    {
        Strike[] strikes = [new(0, Seconds.Zero, new Decibels(-3)), new(1, s.Delay, Decibels.Zero), new(0, new Seconds(2), Decibels.Zero)];
        var doses = new TowerDoses(s.Tower, Fade.Default);
        var all = doses.Parts(strikes, s.Chord, s.From, s.To, int.MaxValue);
        var (roughness, contradiction) = ClashBells.Clash(doses, strikes, s.Chord, s.From, s.To);
        var whole = roughness + contradiction;
        return whole == 0
            ? all.Count == 0
            : Math.Abs((all.OfType<RoughPartials>().Sum(p => p.Share) * whole) - roughness) < 1e-9 * whole
                && Math.Abs((all.OfType<ContraryPartial>().Sum(p => p.Share) * whole) - contradiction) < 1e-9 * whole
                && all.Zip(all.Skip(1), (a, b) => a.Share >= b.Share).All(ordered => ordered)
                && all.OfType<RoughPartials>().All(p => p.LowerBell != p.UpperBell && p.Lower.Frequency.Value <= p.Upper.Frequency.Value);
    }

    /// <summary>A part that is asked for by itself is that among all of them.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public void A_part_by_itself_is_that_among_all(Scene s)
    {
        Strike[] strikes = [new(0, Seconds.Zero, new Decibels(-3)), new(1, s.Delay, Decibels.Zero), new(0, new Seconds(2), Decibels.Zero), new(1, new Seconds(2.5), new Decibels(-6))];
        var doses = new TowerDoses(s.Tower, Fade.Default);
        foreach (var part in doses.Parts(strikes, s.Chord, s.From, s.To, int.MaxValue))
        {
            Assert.Equal(part, doses.Part(NumberedOf(part), strikes, s.Chord, s.From, s.To));
        }

        RungPart NumberedOf(ClashPart part) => part switch
        {
            ContraryPartial p => new RungPart(PlaceOf(p.Bell), PlaceIn(p.Bell, p.Partial), -1, -1, p.Share),
            RoughPartials p when PlaceOf(p.LowerBell) > 0 => new RungPart(0, PlaceIn(p.UpperBell, p.Upper), 1, PlaceIn(p.LowerBell, p.Lower), p.Share),
            RoughPartials p => new RungPart(0, PlaceIn(p.LowerBell, p.Lower), 1, PlaceIn(p.UpperBell, p.Upper), p.Share),
            _ => throw new ArgumentOutOfRangeException(nameof(part), part, "no such part of a clash"),
        };

        int PlaceOf(Bell bell) => bell == s.Tower.Bells[0] ? 0 : 1;

        int PlaceIn(Bell bell, Partial partial) => bell.Partials.Index().First(p => p.Item == partial).Index;
    }

    /// <summary>
    /// Of one bell under the major chord on its strike note the tierce alone stands beside the third: 12 log2 1.196 = 3.1
    /// semitones, E flat beside E. It lies 0 dB from the loudest, so that it is heard for T60 / 3.
    /// </summary>
    [Fact]
    public void Under_its_own_major_chord_a_bell_is_contrary_with_its_tierce()
    {
        var worst = Assert.IsType<ContraryPartial>(
            Price.Parts(ClashBells.Strikes("60@0"), ClashBells.Chord("0 4* 7"), Seconds.Zero, Seconds.Forever, 1)[0]);

        Assert.Equal(("tierce", 3, 4), (worst.Partial.Name, worst.Sounds.Value, worst.Beside.Value));
        Assert.Equal(worst.Partial.Decay.Value / 3, worst.Lasts.Value, 1e-9);
    }

    [Fact]
    public void Strokes_of_one_bell_do_not_quarrel() =>
        Assert.Empty(Price.Parts(ClashBells.Strikes("60@0 60@0.5"), ChordClasses.None, Seconds.Zero, Seconds.Forever, 3));
}
