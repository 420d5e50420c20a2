using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Sounds;
using Revoicer.Tests.Voicings;
using Revoicer.Values;
using Revoicer.Voicings;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests;

/// <summary>The octave of the tune: fixed by the player, or the cheapest; and what the others would have cost.</summary>
public sealed class RevoicingOctaveTests
{
    private const string Ebb = "\"C\"C E G2|\"F\"A2 F2|\"G7\"G F D2|\"C\"C4|]";

    [Theory]
    [InlineData(-1)]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_tune_lies_in_the_octave_asked_for(int octave)
    {
        var sheet = TuneSlots.Sheet(Ebb);
        var made = Made(sheet, octave);

        Assert.Equal(octave, made.TuneOctaves);
        Assert.Equal(
            HeardTune.Of(sheet).Select(n => n.Note.Midi + (12 * octave)),
            made.Strokes.Where(s => s.IsTune).Select(s => s.Note.Midi));
        Assert.Contains($"the tune {OctaveNames.Of(octave)}", made.Wishes);
    }

    // What is told of another octave is held against the draft that has the tune there.
    [Theory]
    [InlineData(null)]
    [InlineData(-1)]
    [InlineData(1)]
    public void What_another_octave_costs_is_so_or_more(int? octave)
    {
        var sheet = TuneSlots.Sheet(Ebb);
        var made = Made(sheet, octave);

        Assert.Equal(OtherOctave.MostTold, made.OtherOctaves.Count);
        foreach (var other in made.OtherOctaves)
        {
            var more = Made(sheet, other.Octaves).Layout!.Price - made.Layout!.Price;
            Assert.True(other.IsExact ? more == other.CostsMore : more >= other.CostsMore, $"{other}: {more}");
        }
    }

    // 48 chords are searched in windows, where an octave is left as soon as it is too dear.
    [Fact]
    public void So_it_is_in_a_long_piece()
    {
        var sheet = TuneSlots.Sheet(string.Concat(Enumerable.Repeat("\"C\"c e \"F\"a f|\"Dm\"d f \"G7\"g2|", 12)) + "]");
        var made = Made(sheet, octave: null);

        Assert.Contains(made.OtherOctaves, o => !o.IsExact && o.CostsMore > 0);
        foreach (var other in made.OtherOctaves)
        {
            Assert.InRange(other.CostsMore!.Value, 0, Made(sheet, other.Octaves).Layout!.Price - made.Layout!.Price);
        }
    }

    [Fact]
    public void The_octave_that_is_taken_is_the_cheapest_and_those_told_are_the_nearest()
    {
        var made = Made(TuneSlots.Sheet(Ebb), octave: null);

        Assert.All(made.OtherOctaves, o => Assert.True(o.CostsMore >= 0));
        Assert.DoesNotContain(made.TuneOctaves!.Value, made.OtherOctaves.Select(o => o.Octaves));
        Assert.Equal(made.OtherOctaves.OrderBy(o => Math.Abs(o.Octaves - made.TuneOctaves.Value)), made.OtherOctaves);
        Assert.Empty(made.Wishes);
    }

    [Fact]
    public void An_octave_that_does_not_fit_is_refused_with_those_that_do()
    {
        var drafting = Draft(TuneSlots.Sheet("\"C\"C G c' g'|\"F\"a4|]"), 1);

        Assert.Equal(
            ["the tune goes from C4 to G6, and an octave higher than written Merrowhaven Harbour Tower does not have all its bells; it fits with --octave -1, 0"],
            Assert.IsType<Drafting.Unplayable>(drafting).Reasons);
    }

    [Fact]
    public void Without_a_tune_the_octave_does_not_matter()
    {
        var sheet = RevoicingTests.Read("quay.chords", "title: Quay\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n");

        Assert.Equal(Made(sheet, null), Made(sheet, 1));
        Assert.Empty(Made(sheet, 1).OtherOctaves);
    }

    [Fact]
    public void Each_octave_has_its_sentence()
    {
        Items<OtherOctave> others =
        [
            new(0, 312_040, false), new(-1, 45_300, true), new(2, null, true), new(1, -20_000, false), new(-2, -5_000, true),
        ];

        Assert.Equal(
            "In its written octave the draft would cost at least 312.0 more. An octave lower than written the draft would cost 45.3 more. "
            + "2 octaves higher than written no voicing keeps every rule. An octave higher than written the draft may cost less, by 20.0 at most. "
            + "2 octaves lower than written the draft would cost 5.0 less.",
            OctaveWords.Of(others));
        Assert.Equal("", OctaveWords.Of([]));
    }

    private static Arrangement Made(LeadSheet sheet, int? octave) => Assert.IsType<Drafting.Made>(Draft(sheet, octave)).Arrangement;

    private static Drafting Draft(LeadSheet sheet, int? octave) =>
        Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, new DraftWish { Octave = octave }, null, CancellationToken.None);
}
