using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Pictures;
using ScottPlot;
using Xunit;

namespace Revoicer.Tests.Pictures;

public sealed class DashedLineTests
{
    [Fact]
    public void Dashes_and_gaps_follow_each_other_round_the_corner()
    {
        // Ten units east, then ten north; dashes of 4, gaps of 2.
        var cut = DashedLine.Cut([new(0, 0), new(10, 0), new(10, 10)], 1, 1, [4, 2]);

        Assert.Equal(
            ["0 0", "4 0", "-", "6 0", "10 0", "10 0", "-", "10 2", "10 6", "-", "10 8", "10 10"],
            cut.Select(Told));
    }

    [Fact]
    public void Lengths_are_those_on_the_sheet_and_not_on_the_axes()
    {
        // A unit of the sheet is 0.5 of the one axis and 10 of the other: three and four of them make five.
        var cut = DashedLine.Cut([new(0, 0), new(3, 80)], 0.5, 10, [5, 1]);

        Assert.Equal(["0 0", "1.5 40", "-", "1.8 48", "3 80"], cut.Select(Told));
    }

    [Fact]
    public void Without_lengths_the_line_stays_as_it_is() =>
        Assert.Equal(["0 0", "3 4", "5 5"], DashedLine.Cut([new(0, 0), new(3, 4), new(5, 5)], 1, 1, []).Select(Told));

    /// <summary>Dashes of a and gaps of b leave of a straight line of length l whole rounds and what is left of a dash.</summary>
    [Law]
    public Property A_straight_line_is_drawn_as_far_as_its_dashes_reach() => Prop.ForAll(
        Gen.Choose(1, 40).Three().Select(n => (Length: n.Item1 + 0.5, Dash: n.Item2, Gap: n.Item3)).ToArbitrary(),
        line =>
        {
            var round = line.Dash + line.Gap;
            var expected = (Math.Floor(line.Length / round) * line.Dash) + Math.Min(line.Length % round, line.Dash);
            return Math.Abs(Drawn([.. DashedLine.Cut([new(0, 0), new(line.Length, 0)], 1, 1, [line.Dash, line.Gap])]) - expected) < 1e-9;
        });

    private static double Drawn(Coordinates[] corners) => corners.Zip(corners.Skip(1))
        .Where(pair => !double.IsNaN(pair.First.X) && !double.IsNaN(pair.Second.X))
        .Sum(pair => pair.Second.X - pair.First.X);

    private static string Told(Coordinates at) =>
        double.IsNaN(at.X) ? "-" : FormattableString.Invariant($"{Math.Round(at.X, 9)} {Math.Round(at.Y, 9)}");
}
