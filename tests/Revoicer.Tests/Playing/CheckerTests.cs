using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Music;
using Revoicer.Playing;
using Xunit;

namespace Revoicer.Tests.Playing;

/// <summary>
/// The hard rules of ../shared/design/3, each with strokes that break it by the least there is and strokes just inside. The
/// numbers are those of playing-limits.tsv, which says what each rests on.
/// </summary>
public sealed class CheckerTests
{
    [Theory]
    [InlineData("bell", "rh C#3", "rh D3")]
    [InlineData("bell", "lf F#2", "lf G2")]
    [InlineData("bell", "rf C#5", "rf C5")]
    [InlineData("bell", "lf C#5", "lh C#5")]
    public void Every_stroke_has_a_bell(string limit, string broken, string kept) => Expect(limit, broken, kept);

    [Theory]
    [InlineData("hand_keys_at_once", "rh C5, rh D5, rh E5", "rh C5, rh D5, lh E5")]
    [InlineData("hand_keys_at_once", "rh C5, rh D5, rh E5 @0.119", "rh C5, rh D5, rh E5 @0.2")]
    [InlineData("hand_move_base_s hand_span", "rh C5, rh F#5", "rh C5, rh F5")]
    [InlineData("hand_pair_lowest_n", "lh F#3, lh A3", "lh G3, lh A3")]
    public void A_hand_takes_two_batons_within_a_fourth_not_too_low(string limit, string broken, string kept) => Expect(limit, broken, kept);

    [Theory]
    [InlineData("foot_keys_at_once", "lf C3, lf E3", "lf C3, rf E3")]
    [InlineData("feet_apart", "lf C3, rf G#4", "lf C3, rf G4")]
    [InlineData("feet_crossed", "rf C3, lf D3", "lf C3, rf D3")]
    [InlineData("feet_crossed", "rf E3, lf F3", "lf E3, rf F3")]
    [InlineData("feet_crossed", "rf C3, lf D3 @0.119", "rf C3, lf D3 @0.12")]
    public void A_foot_takes_one_pedal_and_the_feet_stay_apart_and_uncrossed(string limit, string broken, string kept) => Expect(limit, broken, kept);

    [Theory]
    [InlineData("hands_apart", "lh B3, rh C7", "lh C4, rh C7")]
    [InlineData("hands_crossed", "rh C4, lh C#5", "rh C4, lh C5")]
    public void The_hands_stay_within_reach_of_each_other(string limit, string broken, string kept) => Expect(limit, broken, kept);

    [Theory]
    [InlineData("recovery_below_48_s", "lf B2, lh B2 @0.699", "lf B2, lh B2 @0.7")]
    [InlineData("recovery_48_59_s", "lf C3, rf C3 @0.499", "lf C3, rf C3 @0.5")]
    [InlineData("recovery_60_71_s", "lh C4, rh C4 @0.349", "lh C4, rh C4 @0.35")]
    [InlineData("recovery_60_71_s", "lh B4, rh B4 @0.349", "lh B4, rh B4 @0.35")]
    [InlineData("recovery_72_83_s", "lh C5, rh C5 @0.219", "lh C5, rh C5 @0.22")]
    [InlineData("recovery_from_84_s", "lh C6, rh C6 @0.149", "lh C6, rh C6 @0.15")]
    public void A_bell_recovers_before_it_is_struck_again(string limit, string broken, string kept) => Expect(limit, broken, kept);

    // base + slope log2(1 + natural keys), row change 0.02, onto a heavy key 0.05: by hand beside each.
    [Theory]
    [InlineData("hand_move_base_s", "rh C5, rh G5 @0.216", "rh C5, rh G5 @0.217")] // 0.10 + 0.05 log2 5 = 0.2161
    [InlineData("hand_move_base_s", "rh C5, rh A#5 @0.254", "rh C5, rh A#5 @0.256")] // 0.10 + 0.05 log2 6.5 + 0.02 = 0.2550
    [InlineData("hand_move_base_s", "lh C5, lh C4 @0.249", "lh C5, lh C4 @0.25")] // 0.10 + 0.05 log2 8 = 0.25
    [InlineData("hand_move_base_s", "lh B4, lh B3 @0.299", "lh B4, lh B3 @0.3")] // the same, heavy: 0.30
    [InlineData("foot_move_base_s", "lf C3, lf D3 @0.259", "lf C3, lf D3 @0.26")] // 0.15 + 0.06 + 0.05 = 0.26
    [InlineData("foot_move_base_s", "rf C4, rf C5 @0.329", "rf C4, rf C5 @0.33")] // 0.15 + 0.06 log2 8 = 0.33
    public void A_limb_has_time_to_move(string limit, string broken, string kept) => Expect(limit, broken, kept);

    [Theory]
    [InlineData("rh C5, rh F5, rh G5 @0.16, rh B5 @0.16")] // from F5 one key up: 0.15 s
    [InlineData("rh C5, rh F5 @0.06, rh E5 @0.22, rh A5 @0.28")] // rolls within one hand: from F5 one key down
    public void A_move_counts_between_the_nearest_batons_of_two_grips(string kept) => Assert.Empty(Keys(kept));

    [Fact]
    public void Six_bells_are_struck_at_once_and_no_seventh()
    {
        const string six = "lf C3, rf G3, lh E4, lh G4, rh C5, rh E5";
        Assert.Empty(Keys(six));
        Assert.Equal("bells_at_once hand_keys_at_once", Keys(six + ", rh F5"));
        Assert.Equal("bells_at_once", Keys(six, "bells_at_once = { hard = 5 }"));
    }

    [Fact]
    public void A_breach_names_its_time_and_says_what_cannot_be_done()
    {
        var breaches = new Checker(Strokes.Tower()).Check(Strokes.Of("lh C#3 @2, rh C5 @1, rh G5 @1.1"));

        Assert.Equal(
            [
                "1.00 s hand_span: one hand is to span C5 to G5",
                "1.10 s hand_move_base_s: right hand has 0.10 s from C5 to G5 and needs 0.22 s",
                "2.00 s bell: Merrowhaven Trial Frame has no bell on C#3",
            ],
            breaches.Select(b => $"{b.At} {b.Limit}: {b.Sentence}"));
    }

    [Theory]
    [InlineData("hand_span = { hard = 7 }", "rh C5, rh G5", "")]
    [InlineData("hand_span = { hard = 3 }", "rh C5, rh E5", "hand_move_base_s hand_span")]
    [InlineData("hand_keys_at_once = { hard = 1 }", "rh C5, rh E5", "hand_keys_at_once")]
    [InlineData("hand_pair_lowest_n = { hard = 48 }", "lh C3, lh E3", "")]
    [InlineData("hand_pair_lowest_n = { hard = 127 }", "rh C6, rh E6", "hand_pair_lowest_n")]
    [InlineData("feet_apart = { hard = 24 }", "lf C3, rf C5", "")]
    [InlineData("recovery_60_71_s = { hard = 0.2 }", "lh C4, rh C4 @0.25", "")]
    [InlineData("at_once_s = { hard = 0 }", "lh C4, lh E4, rh C5", "hand_move_base_s")]
    public void A_tower_may_set_limits_of_its_own(string limit, string strokes, string broken) =>
        Assert.Equal(broken, Keys(strokes, limit));

    [Law(Arbitrary = [typeof(PlayingGens)])]
    public Property The_order_in_which_strokes_are_given_does_not_matter()
    {
        var checker = new Checker(Strokes.Tower());
        var any =
            from key in Gen.Choose(43, 96)
            from limb in Gen.Elements(Enum.GetValues<Limb>())
            from tenths in Gen.Choose(0, 20)
            select Strokes.Of(WrittenNote.AtMidi(key), limb, new(tenths / 10.0));
        var given =
            from strokes in any.ArrayOf()
            select strokes.DistinctBy(s => (s.Note, s.At)).ToArray();
        return Prop.ForAll(given.ToArbitrary(), strokes =>
            checker.Check(strokes).Equals(checker.Check(strokes.Reverse())));
    }

    private static void Expect(string limit, string broken, string kept)
    {
        Assert.Equal(limit, Keys(broken));
        Assert.Equal("", Keys(kept));
    }

    // The keys of the limits that are broken, each once.
    private static string Keys(string strokes, string limits = "") => string.Join(
        ' ',
        new Checker(Strokes.Tower(limits)).Check(Strokes.Of(strokes)).Select(b => b.Limit).Distinct().Order(StringComparer.Ordinal));
}
