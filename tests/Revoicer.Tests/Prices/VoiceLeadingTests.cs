using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Prices;
using Revoicer.Tests.Oracles;
using Xunit;

namespace Revoicer.Tests.Prices;

public sealed class VoiceLeadingTests
{
    // The measure: D. Tymoczko, The Geometry of Musical Chords, Science 313, 2006, 72-74 (taxicab size of the least
    // voice leading, tones shared where one chord has more of them).
    [Law(Arbitrary = [typeof(ToneSets)])]
    public void It_is_the_least_over_all_ways_to_pair_the_tones(Tones from, Tones to) =>
        Assert.Equal(LeastMovement.Of(from.Midi, to.Midi), VoiceLeading.Size(from.Midi, to.Midi));

    [Law(Arbitrary = [typeof(ToneSets)])]
    public void The_way_back_is_as_far(Tones from, Tones to) =>
        Assert.Equal(VoiceLeading.Size(from.Midi, to.Midi), VoiceLeading.Size(to.Midi, from.Midi));

    // Every tone of both sets is paired with one of the other; if no pair moves, each set holds the other.
    [Law(Arbitrary = [typeof(ToneSets)])]
    public void Nothing_moves_only_between_equal_sets(Tones from, Tones to)
    {
        Assert.Equal(0, VoiceLeading.Size(from.Midi, from.Midi));
        Assert.Equal(
            from.Midi.Length == 0 || to.Midi.Length == 0 || from.Midi.SequenceEqual(to.Midi),
            VoiceLeading.Size(from.Midi, to.Midi) == 0);
    }

    [Law(Arbitrary = [typeof(ToneSets)])]
    public void Moving_both_sets_alike_changes_nothing(Tones from, Tones to) => Assert.Equal(
        VoiceLeading.Size(from.Midi, to.Midi),
        VoiceLeading.Size(from.MovedUp(5), to.MovedUp(5)));

    // From C major to F major the nearest way holds C and moves E and G up by one and two semitones (common practice).
    [Fact]
    public void C_major_goes_to_F_major_in_three_semitones() =>
        Assert.Equal(3, VoiceLeading.Size([60, 64, 67], [60, 65, 69]));

    /// <summary>Tones in rising order, none twice.</summary>
    public sealed record Tones(int[] Midi)
    {
        internal int[] MovedUp(int semitones) => [.. Midi.Select(m => m + semitones)];

        /// <inheritdoc/>
        public override string ToString() => string.Join(' ', Midi);
    }

    internal static class ToneSets
    {
        // Within a fifth, so that sets often share tones or are equal.
        public static Arbitrary<Tones> Tones() => (
            from size in Gen.Choose(0, 4)
            from midi in Gen.Choose(60, 67).ListOf(size)
            select new Tones([.. midi.Distinct().Order().Take(3)])).ToArbitrary();
    }
}
