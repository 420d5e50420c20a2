using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Tests.Clashes;

/// <summary>Laws of the dose on random bells; the proof stands above each.</summary>
public sealed class DoseLaws
{
    private static readonly Seconds Zero = Seconds.Zero;

    /// <summary>The closed form is the integral: Simpson's rule on the product of the two decays; its own error is below 1e-6 here.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool The_closed_form_is_the_integral(Scene s)
    {
        var (a, b) = (s.Tower.Bells[0].Partials[0], s.Tower.Bells[1].Partials[0]);
        var start = Math.Max(s.Delay.Value, s.From.Value);
        var end = s.To.Value;
        var closed = Dose.Integral(a.Kappa, b.Kappa, s.Delay, s.From, s.To);
        return end <= start
            ? closed == 0
            : Near(closed, Simpson(t => Math.Exp((-a.Kappa * t) - (b.Kappa * (t - s.Delay.Value))), start, end), 1e-6);
    }

    /// <summary>D of a window is the sum, over pairs of partials, of g times the integral of both amplitudes, by Simpson's rule.</summary>
    [Law(Arbitrary = [typeof(ClashGens)], MaxTest = 50)]
    public bool The_dose_of_two_bells_is_the_integral_of_their_roughness(Scene s)
    {
        var doses = new TowerDoses(s.Tower, Fade.None);
        var expected = (
            from a in s.Tower.Bells[0].Partials
            from b in s.Tower.Bells[1].Partials
            select Roughness.Between(a.Frequency, b.Frequency) * a.Amplitude * b.Amplitude * Simpson(
                t => Math.Exp((-a.Kappa * t) - (b.Kappa * (t - s.Delay.Value))),
                Math.Max(s.Delay.Value, s.From.Value),
                Math.Max(Math.Max(s.Delay.Value, s.From.Value), s.To.Value))).Sum();
        return Near(expected * 100 / doses.ReferenceDose, doses.RoughnessWithin(0, 1, s.Delay, s.From, s.To), 1e-6);
    }

    /// <summary>g, A and exp are never negative, so neither is any dose.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool Doses_are_not_negative(Scene s)
    {
        var doses = new TowerDoses(s.Tower, Fade.Default);
        return doses.Roughness(0, 1, s.Delay) >= 0
            && doses.RoughnessWithin(0, 1, s.Delay, s.From, s.To) >= 0
            && doses.Contradiction(0, s.Chord, s.From, s.To) >= 0;
    }

    /// <summary>g and the product of amplitudes are symmetric; at delay 0 so are the times.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool Swapping_two_bells_struck_together_changes_nothing(Scene s)
    {
        var doses = new TowerDoses(s.Tower, Fade.Default);
        return Near(doses.Roughness(0, 1, Zero), doses.Roughness(1, 0, Zero))
            && Near(doses.RoughnessWithin(0, 1, Zero, s.From, s.To), doses.RoughnessWithin(1, 0, Zero, s.From, s.To));
    }

    /// <summary>Likewise with a delay, if the bells change their places in the tower and keep their times.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool The_order_of_the_bells_in_the_tower_changes_nothing(Scene s)
    {
        var doses = new TowerDoses(s.Tower, Fade.Default);
        var turned = new TowerDoses(ClashBells.Of(s.Tower.Bells.Reverse()), Fade.Default);
        return Near(doses.Roughness(0, 1, s.Delay), turned.Roughness(1, 0, s.Delay))
            && Near(doses.RoughnessWithin(0, 1, s.Delay, s.From, s.To), turned.RoughnessWithin(1, 0, s.Delay, s.From, s.To));
    }

    /// <summary>Only differences between strokes and window enter the integral.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool A_shift_in_time_changes_nothing(Scene s)
    {
        var doses = new TowerDoses(s.Tower, Fade.Default);
        var shift = new Seconds(7);
        Strike[] strikes = [new(0, Zero, Decibels.Zero), new(1, s.Delay, Decibels.Zero)];
        Strike[] later = [.. strikes.Select(k => k with { At = k.At + shift })];
        var before = ClashBells.Clash(doses, strikes, s.Chord, s.From, s.To);
        var after = ClashBells.Clash(doses, later, s.Chord, s.From + shift, s.To + shift);
        return Near(before.Roughness, after.Roughness) && Near(before.Contradiction, after.Contradiction);
    }

    /// <summary>Every term of D and of C has two amplitudes, each scaled by 10^(x/20).</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool Scaling_all_levels_by_x_dB_scales_the_doses_by_10_to_x_tenths(Scene s)
    {
        var level = new Decibels(s.Delay.Value * 5 - 8);
        var factor = level.AmplitudeFactor;
        var doses = new TowerDoses(s.Tower, Fade.Default);
        var louder = new TowerDoses(Each(s.Tower, p => p with { Amplitude = p.Amplitude * factor }), Fade.Default);
        var scale = Math.Pow(10, level.Value / 10);
        return Near(scale * doses.Roughness(0, 1, s.Delay), louder.Roughness(0, 1, s.Delay))
            && Near(scale * doses.Contradiction(0, s.Chord, s.From, s.To), louder.Contradiction(0, s.Chord, s.From, s.To));
    }

    /// <summary>Classes are counted by ratio from the bell's own strike, and nothing else of C knows a frequency.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool Tuning_the_whole_tower_leaves_contradiction_unchanged(Scene s)
    {
        var factor = 0.9 + (s.Delay.Value / 10);
        var tuned = ClashBells.Of(Each(s.Tower, p => p with { Frequency = new Hertz(p.Frequency.Value * factor) })
            .Bells.Select(b => b with { Strike = new Hertz(b.Strike.Value * factor) }));
        return Near(
            new TowerDoses(s.Tower, Fade.Default).Contradiction(0, s.Chord, s.From, s.To),
            new TowerDoses(tuned, Fade.Default).Contradiction(0, s.Chord, s.From, s.To));
    }

    /// <summary>Classes of chord and partials move together, and w knows only distances between them.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool Moving_chord_and_bell_alike_leaves_contradiction_unchanged(Scene s)
    {
        var moved = ClashBells.Of(s.Tower.Bells.Select(b => b with { StrikeNote = StrikeNote.AtMidi(b.StrikeNote.Midi + 5) }));
        return Near(
            new TowerDoses(s.Tower, Fade.None).Contradiction(0, s.Chord, s.From, s.To),
            new TowerDoses(moved, Fade.None).Contradiction(0, s.Chord.Moved(5), s.From, s.To));
    }

    /// <summary>
    /// With u = t - delay the integral is exp(-kappa_i delay) times that of exp(-(kappa_i + kappa_j) u) over
    /// 0..(closing time - delay): two factors that both fall as the delay grows.
    /// </summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool Delaying_the_later_stroke_never_raises_the_dose(Scene s)
    {
        var doses = new TowerDoses(s.Tower, Fade.Default);
        var more = s.Delay + new Seconds(0.3);
        return AtMost(doses.Roughness(0, 1, more), doses.Roughness(0, 1, s.Delay))
            && AtMost(doses.RoughnessWithin(0, 1, more, Zero, s.To), doses.RoughnessWithin(0, 1, s.Delay, Zero, s.To));
    }

    /// <summary>An integral over two windows that touch is that over both.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool Windows_that_touch_add_up(Scene s)
    {
        var doses = new TowerDoses(s.Tower, Fade.Default);
        var end = s.To + new Seconds(1);
        return Near(
                doses.RoughnessWithin(0, 1, s.Delay, s.From, s.To) + doses.RoughnessWithin(0, 1, s.Delay, s.To, end),
                doses.RoughnessWithin(0, 1, s.Delay, s.From, end))
            && Near(
                doses.Contradiction(0, s.Chord, s.From, s.To) + doses.Contradiction(0, s.Chord, s.To, Seconds.Forever),
                doses.Contradiction(0, s.Chord, s.From, Seconds.Forever));
    }

    /// <summary>The fade makes every integrand smaller, and the sum, before it is put into clash units, with it.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool The_fade_lowers_every_raw_dose(Scene s)
    {
        var (physics, faded) = (new DoseTables(s.Tower.Bells, Fade.None), new DoseTables(s.Tower.Bells, Fade.Default));
        return AtMost(faded.Roughness(0, 1, s.Delay), physics.Roughness(0, 1, s.Delay))
            && AtMost(faded.Contradiction(0, s.Chord, s.From, s.To), physics.Contradiction(0, s.Chord, s.From, s.To));
    }

    /// <summary>Three ways to one number: summed over partials beforehand, pair by pair to infinity, and as a table.</summary>
    [Law(Arbitrary = [typeof(ClashGens)])]
    public bool The_fast_forms_agree_with_the_window_without_end(Scene s)
    {
        var doses = new TowerDoses(s.Tower, Fade.Default);
        var table = new double[4];
        doses.Roughness(s.Delay, table);
        return table[0] == 0 && table[3] == 0
            && Near(table[1], doses.RoughnessWithin(0, 1, s.Delay, Zero, Seconds.Forever))
            && Near(table[2], doses.RoughnessWithin(1, 0, s.Delay, Zero, Seconds.Forever))
            && Near(table[1], doses.Roughness(0, 1, s.Delay))
            && Near(table[2], doses.Roughness(1, 0, s.Delay));
    }

    private static Tower Each(Tower tower, Func<Partial, Partial> change) =>
        ClashBells.Of(tower.Bells.Select(b => b with { Partials = b.Partials.Select(change).ToItems() }));

    private static bool Near(double a, double b, double relative = 1e-8) =>
        Math.Abs(a - b) <= (relative * Math.Max(Math.Abs(a), Math.Abs(b))) + 1e-12;

    private static bool AtMost(double a, double b) => a <= b + (1e-12 * b) + 1e-15;

    private static double Simpson(Func<double, double> f, double from, double to)
    {
        const int steps = 8000;
        var h = (to - from) / steps;
        return h / 3 * Enumerable.Range(0, steps + 1)
            .Sum(i => f(from + (i * h)) * (i is 0 or steps ? 1 : i % 2 == 1 ? 4 : 2));
    }
}
