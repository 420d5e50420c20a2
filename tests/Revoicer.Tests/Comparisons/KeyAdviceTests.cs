using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.Comparisons;
using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.Comparisons;

public sealed class KeyAdviceTests
{
    [Fact]
    public void The_cheapest_key_is_recommended_with_what_it_saves() => Assert.Equal(
        "play it in D major (--key +2): price 90.0, the lowest of the 3 keys that can be played, 10.0 % less than the 100.0 as written",
        KeyAdvice.Of(SomeFigures.Keys((-1, 95), (0, 100), (2, 90)))!.Reason);

    [Fact]
    public void Within_two_percent_the_nearest_to_the_written_key_is_taken() => Assert.Equal(
        "stay in C major: price 101.0; D major is only 1.0 % cheaper, and of prices within 2 % the nearest key to the written one is taken",
        KeyAdvice.Of(SomeFigures.Keys((0, 101), (2, 100)))!.Reason);

    [Fact]
    public void Two_percent_count_and_more_does_not()
    {
        Assert.Equal(0, Chosen((0, 102), (2, 100)));
        Assert.Equal(2, Chosen((0, 102.001), (2, 100)));
    }

    // Three semitones up lies E flat major with three flats, three down A major with three sharps; four up E major with four
    // sharps, four down A flat major with four flats; one up D flat with five, one down B with five; two up D major with two sharps, two
    // down B flat major with two flats. So in C major accidentals never decide, and then the price does.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Of_two_equally_near_with_as_many_accidentals_the_cheaper_is_taken(int apart)
    {
        Assert.Equal(-apart, Chosen((-apart, 100), (0, 200), (apart, 101)));
        Assert.Equal(apart, Chosen((-apart, 101), (0, 200), (apart, 100)));
        Assert.Equal(apart, Chosen((-apart, 100), (0, 200), (apart, 100)));
    }

    // From A major two semitones up is B major with five sharps, two down G major with one.
    [Fact]
    public void Of_two_equally_near_the_one_with_fewer_accidentals_is_taken_though_it_costs_a_little_more()
    {
        var written = new KeySignature(new NoteName(Letter.A), Mode.Major);
        ComparedSetting Key(int semitones, double price) => SomeFigures.At(semitones, price) with
        {
            Setting = new Setting("Slipway", "balanced", semitones, written.Moved(semitones), null),
        };
        Assert.Equal(
            "play it in G major (--key -2): price 101.0, 49.5 % less than the 200.0 as written; B major is only 1.0 % cheaper, "
            + "and of prices within 2 % in keys equally near the written one that with fewer accidentals is taken",
            KeyAdvice.Of([Key(-2, 101), Key(0, 200), Key(2, 100)])!.Reason);
    }

    [Fact]
    public void A_key_with_a_pedal_for_every_bass_goes_before_a_cheaper_one_without()
    {
        var advice = KeyAdvice.Of([SomeFigures.At(0, 80, withPedal: 7), SomeFigures.At(3, 100)])!;
        Assert.Equal(
            "play it in Eb major (--key +3): price 100.0, the lowest of the one key with a pedal for every bass; as written 3 of 10 basses have no pedal",
            advice.Reason);
    }

    [Fact]
    public void Where_no_key_has_all_basses_the_one_with_most_is_taken() => Assert.Equal(
        "play it in Db major (--key +1): price 100.0, the lowest of the 2 keys with pedals for the most basses, 8 of 10; as written 3 of 10 basses have no pedal",
        KeyAdvice.Of([SomeFigures.At(0, 80, withPedal: 7), SomeFigures.At(1, 100, withPedal: 8), SomeFigures.At(2, 120, withPedal: 8)])!.Reason);

    [Fact]
    public void A_written_key_in_which_a_wish_cannot_be_met_is_told() => Assert.EndsWith(
        "the lowest of the one key in which all wishes can be met; as written a wish cannot be met",
        KeyAdvice.Of([SomeFigures.Unplayable(0) with { Drafting = new Drafting.Unmet([]) }, SomeFigures.At(5, 100)])!.Reason,
        StringComparison.Ordinal);

    [Fact]
    public void Of_two_at_one_price_neither_is_called_cheaper() => Assert.Equal(
        "play it in D major (--key +2): price 100.0, the lowest of the 3 keys that can be played, 50.0 % less than the 200.0 as written",
        KeyAdvice.Of(SomeFigures.Keys((-2, 100), (0, 200), (2, 100)))!.Reason);

    [Fact]
    public void A_written_key_that_cannot_be_played_is_told() => Assert.Equal(
        "play it in F major (--key +5): price 100.0, the lowest of the one key that can be played; as written it cannot be played here",
        KeyAdvice.Of([SomeFigures.Unplayable(0), SomeFigures.At(5, 100)])!.Reason);

    [Fact]
    public void Where_nothing_can_be_played_nothing_is_recommended() => Assert.Null(KeyAdvice.Of([SomeFigures.Unplayable(0), SomeFigures.Unplayable(1)]));

    // Read off the definition: no key that fits as well is cheaper by more than 2 % of it, and none within 2 % of the
    // cheapest is nearer.
    [Law]
    public void None_is_much_cheaper_and_none_as_good_is_nearer(int seed)
    {
        var random = new Random(seed);
        var keys = Enumerable.Range(-5, 12).Select(s => SomeFigures.At(s, random.Next(95, 110), random.Next(9, 11))).ToArray();
        var chosen = KeyAdvice.Of(keys)!.Chosen;
        var fitting = keys.Where(k => k.Fit.WithPedal == keys.Max(o => o.Fit.WithPedal)).ToArray();
        var least = fitting.Min(k => k.Figures!.Price);
        Assert.Contains(chosen, fitting);
        Assert.True(chosen.Figures!.Price <= 1.02 * least);
        Assert.DoesNotContain(fitting, k => k.Figures!.Price <= 1.02 * least && Math.Abs(k.Setting.Semitones) < Math.Abs(chosen.Setting.Semitones));
    }

    private static int Chosen(params (int Semitones, double Price)[] keys) => KeyAdvice.Of(SomeFigures.Keys(keys))!.Chosen.Setting.Semitones;
}
