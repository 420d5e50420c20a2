using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

/// <summary>
/// Tones of one hand that are struck one after another need time to travel but no grip: under a tune the hand that is free may take
/// them further apart than it spans (playing-limits.tsv, hand_span).
/// </summary>
public sealed class WideHandTests
{
    private static readonly Tower Harbour = ShippedTowers.Default;

    private static readonly Reach Reach = TuneSlots.ReachOf(Harbour);

    private static readonly Candidate[] Wide =
        [.. TuneSlots.List(TuneSlots.Plan(TuneSlots.Sheet("\"C\"c'4 | \"F\"c'4 |]"), Harbour).Slots[0], Harbour).Where(c => c.Voicing.Upper.Count > 1 && !IsGrip(c))];

    [Fact]
    public void One_hand_takes_tones_wider_than_its_span_and_three_of_them_a_beat_each()
    {
        Assert.Contains(Wide, c => c.Voicing.Upper.Count == 2);
        Assert.Contains(Wide, c => c.Voicing.Upper.Count == 3);
        Assert.All(Wide, c => Assert.Equal(Figure.Broken, c.Figure));
    }

    [Fact]
    public void A_hand_strikes_one_of_them_at_a_time_and_has_time_to_travel() => Assert.All(Wide, c =>
    {
        var hand = c.Strokes.Where(s => s.Limb == Limb.LeftHand).ToArray();
        Assert.Equal(hand.Length, hand.Select(s => s.After).Distinct().Count());
        Assert.All(hand.Zip(hand.Skip(1)), pair => Assert.True(
            Reach.MoveTime(Limb.LeftHand, pair.First.Note, pair.Second.Note).Value <= (pair.Second.After - pair.First.After).Quarters * 60 / 84));
    });

    private static bool IsGrip(Candidate candidate) =>
        candidate.Voicing.Upper.GroupBy(b => b.Limb).All(hand => hand.Count() < 2 || (hand.Count() == 2 && Reach.HandTakes(hand.First().Note, hand.Last().Note)));
}
