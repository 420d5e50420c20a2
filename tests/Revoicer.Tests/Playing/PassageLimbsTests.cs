using FsCheck;
using FsCheck.Fluent;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Playing;

public class PassageLimbsTests
{
    private static readonly Tower Tower = ShippedTowers.Default;

    private static readonly Limb[] All = Enum.GetValues<Limb>();

    [Fact]
    public void A_chord_over_a_bass_has_the_bass_in_the_pedals_and_both_hands_above() =>
        Assert.Equal([Limb.LeftFoot, Limb.LeftHand, Limb.RightHand], Found(Chord(0, "C3", "E5", "C6"))[0]);

    [Fact]
    public void A_line_with_time_stays_in_the_right_hand() =>
        Assert.All(Found(Chord(0, "C5"), Chord(1, "D5"), Chord(2, "E5")), limbs => Assert.Equal(Limb.RightHand, limbs[0]));

    [Fact]
    public void A_quick_leap_takes_both_hands()
    {
        // An octave to and fro in 0.2 s: one hand needs 0.1 + 0.05 log2(1 + 7) = 0.25 s (playing-limits.tsv).
        var found = Found(Chord(0, "G5"), Chord(0.2, "G6"), Chord(0.4, "G5"), Chord(0.6, "G6"));
        Assert.All(found.Zip(found.Skip(1)), pair => Assert.NotEqual(pair.First[0], pair.Second[0]));
    }

    [Fact]
    public void Four_batons_are_two_in_each_hand()
    {
        var found = Found(Chord(0, "C5", "E5", "A5", "C6"));
        Assert.Equal([Limb.LeftHand, Limb.LeftHand, Limb.RightHand, Limb.RightHand], found[0]);
    }

    [Fact]
    public void Two_low_notes_are_for_the_feet() =>
        Assert.Equal([Limb.LeftFoot, Limb.RightFoot], Found(Chord(0, "C3", "G3"))[0]);

    [Fact]
    public void A_passage_without_notes_needs_no_limbs() => Assert.Empty(PassageLimbs.Of(Tower, [], cancel: TestContext.Current.CancellationToken));

    [Fact]
    public void More_notes_than_limbs_can_take_still_get_limbs()
    {
        var chord = Tower.Bells.Take(20).Select(b => new LineNote(b.Note, Seconds.Zero)).ToItems();
        Assert.Equal(20, PassageLimbs.Of(Tower, [chord], cancel: TestContext.Current.CancellationToken)[0].Count);
    }

    [Law(MaxTest = 200)]
    public FsCheck.Property No_other_limbs_take_less_effort() => Prop.ForAll(Passages.ToArbitrary(), chords =>
    {
        var least = Ways(chords).Min(limbs => PassageLimbs.EffortOf(Tower, chords, limbs));
        Assert.Equal(least, PassageLimbs.EffortOf(Tower, chords, PassageLimbs.Of(Tower, chords, cancel: TestContext.Current.CancellationToken)), 6);
    });

    [Law(MaxTest = 200)]
    public FsCheck.Property What_some_limbs_can_play_is_played() => Prop.ForAll(Passages.ToArbitrary(), chords =>
    {
        var checker = new Checker(Tower);
        if (Ways(chords).Any(limbs => checker.Check(Struck(chords, limbs)).Count == 0))
        {
            Assert.Empty(checker.Check(Struck(chords, PassageLimbs.Of(Tower, chords, cancel: TestContext.Current.CancellationToken))));
        }
    });

    [Theory]
    [InlineData(1)]
    [InlineData(1000)]
    public void Looking_for_limbs_can_be_stopped(int chords)
    {
        Items<LineNote>[] notes = [.. Enumerable.Range(0, chords).Select(i => (Items<LineNote>)[new LineNote(WrittenNote.AtMidi(60), new Seconds(i))])];
        Assert.ThrowsAny<OperationCanceledException>(() => PassageLimbs.Of(Tower, notes, new CancellationToken(canceled: true)));
    }

    private static Items<Items<Limb>> Found(params Items<LineNote>[] chords) => PassageLimbs.Of(Tower, chords, cancel: TestContext.Current.CancellationToken);

    private static Items<LineNote> Chord(double at, params string[] notes) =>
        notes.Select(n => new LineNote(Strokes.Note(n), new Seconds(at))).ToItems();

    private static IEnumerable<Stroke> Struck(IReadOnlyList<Items<LineNote>> chords, IReadOnlyList<Items<Limb>> limbs) =>
        chords.SelectMany((chord, i) => chord.Select((n, k) => Strokes.Of(n.Note, limbs[i][k], n.At)));

    // Up to five notes in up to three chords, near enough to each other in time and pitch for limits to bite; rolls among them.
    private static Gen<Items<LineNote>[]> Passages =>
        from sizes in Gen.Elements<int[]>([1, 1, 1, 1], [2, 1, 2], [3, 2], [1, 3, 1], [2, 2], [4], [1, 2, 1], [1, 4])
        from keys in Gen.Choose(0, Tower.Bells.Count - 1).ArrayOf(sizes.Sum())
        from near in Gen.Choose(0, 1)
        from gaps in Gen.Choose(5, 70).ArrayOf(sizes.Length)
        from step in Gen.Elements(0, 0, 0.06)
        select sizes.Select((size, i) => Made(
            keys.Skip(sizes.Take(i).Sum()).Take(size).Select(k => near == 1 ? 10 + (k % 14) : k), gaps.Take(i).Sum() / 100.0, step)).ToArray();

    private static Items<LineNote> Made(IEnumerable<int> keys, double at, double step) => keys.Distinct().Order()
        .Select((k, i) => new LineNote(Tower.Bells[k].Note, new Seconds(at + (step * i))))
        .ToItems();

    // All ways in which each foot takes one pedal, the left the lower, and the hands part the rest at a height.
    private static IEnumerable<Items<Limb>[]> Ways(Items<LineNote>[] chords) => chords
        .Select(WaysOf)
        .Aggregate<Items<Limb>[], IEnumerable<Items<Limb>[]>>([[]], (before, ways) => before.SelectMany(_ => ways, (b, w) => (Items<Limb>[])[.. b, w]));

    private static Items<Limb>[] WaysOf(Items<LineNote> chord) =>
    [
        .. Enumerable.Range(0, (int)Math.Pow(4, chord.Count))
            .Select(n => chord.Select((_, i) => All[(n >> (2 * i)) & 3]).ToItems())
            .Where(limbs => AreParted(chord, limbs)),
    ];

    private static bool AreParted(Items<LineNote> chord, Items<Limb> limbs)
    {
        int[] Of(Limb limb) => [.. Enumerable.Range(0, chord.Count).Where(i => limbs[i] == limb)];
        var (leftFoot, rightFoot, left, right) = (Of(Limb.LeftFoot), Of(Limb.RightFoot), Of(Limb.LeftHand), Of(Limb.RightHand));
        var feet = leftFoot.Length <= 1 && rightFoot.Length <= 1
            && leftFoot.Concat(rightFoot).All(i => Tower.HasPedal(chord[i].Note))
            && (leftFoot.Length == 0 || rightFoot.Length == 0 || leftFoot[0] < rightFoot[0]);
        return feet && (left.Length == 0 || right.Length == 0 || left[^1] < right[0] || right[^1] < left[0]);
    }
}
