using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.ChordGrid;

/// <summary>A text put together from pieces of chord grids, mostly senseless.</summary>
public sealed record GridText(string Text);

/// <summary>A sheet as a grid can say it, and one way to write it.</summary>
public sealed record WrittenGrid(
    Meter Meter,
    int? Pickup,
    int Tempo,
    IReadOnlyList<IReadOnlyList<string>> Bars,
    int? RepeatAfter);

/// <summary>Generators for chord grids.</summary>
public static class GridGens
{
    private static readonly string[] Pieces =
    [
        "|", "||", "|:", ":|", "|]", "[1", "[2", "[", ":", " ", " ", "\n", "\r\n", "C", "G7", "F#m7", "(E7)", "/", "%", "N.C.", "#", " # ", "Fine",
        "time: 3/4", "time: 7/8", "tempo: 90", "tempo: -1", "pickup: 1", "title: Kelp", "key: Q", "C7b15", "(", ")", "\t", "\0", "\uD834", "C7(b9, #11)",
    ];

    private static readonly Meter[] Meters = [new(2, 4), new(3, 4), new(4, 4), new(6, 8), new(9, 8), new(12, 8), new(2, 2)];

    private static readonly string[] Chords = ["C", "F#m7", "Bb/D", "G7(b9, #11)", "N.C.", "Ebmaj7", "Am/G"];

    public static Arbitrary<GridText> AnyText() =>
        Gen.Elements(Pieces).ArrayOf().Select(p => new GridText(string.Concat(p))).ToArbitrary();

    public static Arbitrary<WrittenGrid> Sheets() =>
        (from meter in Gen.Elements(Meters)
         from pickup in Gen.Choose(0, meter.BeatsInBar - 1)
         from tempo in Gen.Choose(20, 300)
         from first in Gen.Elements(Chords).ListOf(pickup == 0 ? meter.BeatsInBar : pickup)
         from bars in Bar(meter).NonEmptyListOf()
         from repeat in Gen.Choose(0, bars.Count)
         select new WrittenGrid(meter, pickup == 0 ? null : pickup, tempo, [[.. first], .. bars], repeat == 0 ? null : repeat)).ToArbitrary();

    private static Gen<IReadOnlyList<string>> Bar(Meter meter) =>
        from count in Gen.Elements(Enumerable.Range(1, meter.BeatsInBar).Where(n => meter.BeatsInBar % n == 0).ToArray())
        from chords in Gen.Elements(Chords).ListOf(count)
        select (IReadOnlyList<string>)[.. chords];
}

public class ChordGridLaws
{
    [Law(Arbitrary = [typeof(GridGens)], MaxTest = 1000)]
    public void Any_text_ends_in_a_sheet_or_in_problems_with_a_place(GridText grid, string? any)
    {
        foreach (var text in new[] { grid.Text, any ?? "", "time: 4/4\n| C |" + grid.Text + "|" })
        {
            switch (Grid.Read(text))
            {
                case Reading<LeadSheet>.Accepted accepted:
                    Assert.All(accepted.Value.Bars, AssertCovered);
                    break;
                case Reading<LeadSheet>.Refused refused:
                    Assert.NotEmpty(refused.Problems);
                    Assert.All(refused.Problems, p => Assert.InRange(p.Where.Column, 0, p.Where.LineText.Length + 1));
                    break;
            }
        }
    }

    [Law(Arbitrary = [typeof(GridGens)])]
    public void A_grid_written_out_reads_back(WrittenGrid grid)
    {
        var sheet = Grid.Sheet(Text(grid));
        Assert.Equal(new Tempo(grid.Meter.Beat, grid.Tempo), sheet.Tempo);
        Assert.Equal(grid.Bars.Count, sheet.Bars.Count);
        Assert.Equal(grid.Bars.Count + (grid.RepeatAfter ?? 0), sheet.Played.Count);
        foreach (var (i, bar) in sheet.Bars.Index())
        {
            Assert.Equal(grid.Bars[i].Select(c => c == "N.C." ? null : c), bar.Chords.Select(c => c.Symbol?.ToString()));
            Assert.Equal(i == 0 && grid.Pickup is { } p ? grid.Meter.Beat * p : grid.Meter.Bar, bar.Length);
            Assert.Equal(grid.Pickup is null ? i + 1 : i, bar.Number);
            AssertCovered(bar);
        }
    }

    private static void AssertCovered(WrittenBar bar)
    {
        var at = Beats.Zero;
        foreach (var span in bar.Chords)
        {
            Assert.Equal(at, span.Start);
            Assert.True(span.Length > Beats.Zero);
            at += span.Length;
        }

        Assert.Equal(bar.Length, at);
    }

    // The repeat covers the bars up to a place; every other bar begins a line, so that both ways of writing occur.
    private static string Text(WrittenGrid grid)
    {
        var lines = grid.Bars.Select((bar, i) => (grid.RepeatAfter is not null && i == 0 ? "|: " : "| ")
            + string.Join(' ', bar)
            + (i + 1 == grid.RepeatAfter ? " :|\n" : i % 2 == 1 ? " |\n" : " "));
        var pickup = grid.Pickup is { } p ? $"pickup: {p}\n" : "";
        return string.Create(CultureInfo.InvariantCulture, $"time: {grid.Meter}\ntempo: {grid.Tempo}\n{pickup}{string.Concat(lines)}|]\n");
    }
}
