using FsCheck.Xunit;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Clashes;

public sealed class QuarrelTests
{
    private static readonly TowerDoses Price = new(ClashBells.Wide, Fade.Default);

    /// <summary>
    /// In a close major third the lower bell's tierce (261.6 x 1.196 = 313 Hz) meets the upper bell's prime (330 Hz);
    /// numbers by hand from bell-law.tsv.
    /// </summary>
    [Fact]
    public void The_tierce_of_C_quarrels_most_with_the_prime_of_E()
    {
        var worst = Price.Quarrels(ClashBells.Strikes("60@0 64@0 67@0"), Seconds.Zero, Seconds.Forever, 3)[0];

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
        var worst = Price.Quarrels(ClashBells.Strikes("60@1 64@1"), new Seconds(1), new Seconds(2), 1)[0];
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

        double Lasts(double from) => Price.Quarrels(strikes, new Seconds(from), Seconds.Forever, int.MaxValue)
            .Single(q => (q.Lower.Name, q.Upper.Name) == ("tierce", "prime")).Lasts.Value;
    }

    /// <summary>Shares are parts of one whole, and that whole is the dose of the strokes.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool Shares_add_up_to_one_in_falling_order(Scene s)
    {
        Strike[] strikes = [new(0, Seconds.Zero, new Decibels(-3)), new(1, s.Delay, Decibels.Zero), new(0, new Seconds(2), Decibels.Zero)];
        var doses = new TowerDoses(s.Tower, Fade.Default);
        var all = doses.Quarrels(strikes, s.From, s.To, int.MaxValue);
        var whole = ClashBells.Clash(doses, strikes, s.Chord, s.From, s.To).Roughness;
        return whole == 0
            ? all.Count == 0
            : Math.Abs(all.Sum(p => p.Share) - 1) < 1e-9
                && all.Zip(all.Skip(1), (a, b) => a.Share >= b.Share).All(ordered => ordered)
                && all.All(p => p.LowerBell != p.UpperBell && p.Lower.Frequency.Value <= p.Upper.Frequency.Value);
    }

    [Fact]
    public void Strokes_of_one_bell_do_not_quarrel() =>
        Assert.Empty(Price.Quarrels(ClashBells.Strikes("60@0 60@0.5"), Seconds.Zero, Seconds.Forever, 3));
}
