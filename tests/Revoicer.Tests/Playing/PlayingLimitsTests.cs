using System.Globalization;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Xunit;

namespace Revoicer.Tests.Playing;

public sealed class PlayingLimitsTests
{
    [Fact]
    public void The_shipped_limits_are_those_of_the_table()
    {
        var rows = SharedFiles.LinesOrSkip("reference", "playing-limits.tsv")
            .Where(l => l.Length > 0 && l[0] != '#').Skip(1).Select(l => Row(l.Split('\t'))).ToArray();

        Assert.Equal(rows.Length, PlayingLimits.Keys.Count());
        Assert.All(rows, row => Assert.Equal(row, PlayingLimits.Shipped.Row(row.Key)));
    }

    [Fact]
    public void A_tower_may_set_every_row_and_no_other() =>
        Assert.Equal(PlayingLimits.Keys, LimitKeys.All.Order(StringComparer.Ordinal));

    [Fact]
    public void A_tower_that_sets_half_a_row_leaves_the_other_half()
    {
        var limits = PlayingLimits.For(Strokes.Tower("hand_span = { hard = 7 }\nfeet_apart = { soft = 12 }"));

        Assert.Equal(new PlayingLimit("hand_span", 7, 4, "set by the tower file"), limits.Row("hand_span"));
        Assert.Equal(new PlayingLimit("feet_apart", 19, 12, "set by the tower file"), limits.Row("feet_apart"));
        Assert.Equal(PlayingLimits.Shipped.Row("hands_apart"), limits.Row("hands_apart"));
    }

    [Fact]
    public void A_half_that_is_not_there_is_told_by_its_key()
    {
        Assert.Contains("hand_lowest_n", Assert.Throws<KeyNotFoundException>(() => PlayingLimits.Shipped.Hard("hand_lowest_n")).Message);
        Assert.Contains("at_once_s", Assert.Throws<KeyNotFoundException>(() => PlayingLimits.Shipped.Soft("at_once_s")).Message);
    }

    [Theory]
    [InlineData("C4", 12, "recovery_60_71_s")]
    [InlineData("B3", 12, "recovery_48_59_s")]
    [InlineData("C4", 24, "recovery_72_83_s")]
    [InlineData("C4", 0, "recovery_48_59_s")]
    [InlineData("B2", 12, "recovery_below_48_s")]
    [InlineData("C6", 12, "recovery_from_84_s")]
    public void Recovery_goes_by_the_bell_and_not_by_its_key(string key, int sounds, string row) =>
        Assert.Equal(row, PlayingLimits.RecoveryKey(Strokes.Note(key), new Transposition(sounds)));

    private static PlayingLimit Row(string[] cells) => new(cells[0], Number(cells[1]), Number(cells[2]), cells[3]);

    private static double? Number(string cell) => cell.Length == 0 ? null : double.Parse(cell, CultureInfo.InvariantCulture);
}
