using System.Globalization;
using Revoicer.Bells;
using Xunit;

namespace Revoicer.Tests.Bells;

public sealed class ShippedTowersTests
{
    [Fact]
    public void The_default_tower_has_47_bells_from_C3_to_C7_in_concert_pitch()
    {
        // Published: the compass that contests ask for (../shared/reference/towers.tsv, row 47).
        var tower = ShippedTowers.Default;

        Assert.Equal(47, tower.Bells.Count);
        Assert.Equal(("C3", "C7"), (tower.Bells[0].Note.ToString(), tower.Bells[^1].Note.ToString()));
        Assert.Equal(["C#3", "D#3"], tower.Missing.Select(n => n.ToString()));
        Assert.Equal("C4", tower.Bells[0].StrikeNote.ToString());
    }

    [Fact]
    public void The_towers_are_those_of_the_table()
    {
        var rows = SharedFiles.LinesOrSkip("reference", "towers.tsv")
            .Where(l => l.Length > 0 && l[0] != '#').Skip(1).Select(l => l.Split('\t')).ToList();

        Assert.Equal(rows.Count, ShippedTowers.Names.Count);
        foreach (var (name, row) in ShippedTowers.Names.Zip(rows))
        {
            var tower = ShippedTowers.Named(name);
            Assert.Equal(
                (row[0], row[1], row[2], row[3], row[4], row[5]),
                (Text(tower.Bells.Count),
                    Text(tower.Bells[0].Note.Midi),
                    Text(tower.Bells[^1].Note.Midi),
                    string.Join(' ', tower.Missing.Select(n => Text(n.Midi))),
                    $"{Text(tower.PedalsFrom.Midi)}..{Text(tower.PedalsTo.Midi)}",
                    Text(tower.Transposition.Semitones)));
        }
    }

    [Fact]
    public void Another_name_is_answered_with_those_that_ship()
    {
        var thrown = Assert.Throws<ArgumentException>(() => ShippedTowers.Named("river-12"));
        Assert.StartsWith("no tower 'river-12' ships; these do: chapel-23, custom-house-37, harbour-47, lighthouse-49, great-56", thrown.Message);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
