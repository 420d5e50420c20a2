using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Json;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests;

/// <summary>A draft in which a foot leads into the next bass, from the sheet to its files.</summary>
public sealed class ApproachDraftTests
{
    private static readonly Arrangement Leading = Draft(approach: 300);

    [Fact]
    public void A_foot_leads_by_step_into_the_next_bass_and_the_reasons_say_so()
    {
        var leading = Assert.Single(Leading.Choices, c => c.Figure == "together" && c.Strokes.Any(s => s.Beat > c.Start));
        var tone = leading.Strokes.MaxBy(s => s.At)!;
        var next = Leading.Choices.First(c => c.Start == leading.Start + leading.Length).Strokes.First(s => s.IsPedal);

        Assert.True(tone.IsPedal);
        Assert.InRange((next.Note - tone.Note).Size.Semitones, 1, 2);
        Assert.Empty(new Checker(ShippedTowers.Default).Check(Leading.Strokes));
        Assert.Contains($"{tone.Note} leads by step into the next bass.", RationaleText.Of(Leading), StringComparison.Ordinal);
    }

    [Fact]
    public void Its_file_is_read_back_as_it_was() =>
        Assert.Equal(Leading, Assert.IsType<Reading<Arrangement>.Accepted>(ArrangementJson.Read("back.json", ArrangementJson.Write(Leading))).Value);

    [Fact]
    public void Where_it_is_worth_nothing_none_leads() =>
        Assert.DoesNotContain(Draft(approach: 0).Choices, c => c.Strokes.Any(s => s.Beat > c.Start));

    // Four chords that would rather be struck together than in any other figure.
    private static Arrangement Draft(double approach)
    {
        var sheet = RevoicingTests.Read("spray.chords", "title: Spray\nkey: C\ntime: 4/4\ntempo: 96\n| C | F | G | C |]\n");
        var sound = ShippedSounds.Default with { Approach = approach, BassFirst = 500, Afterbeats = 500, Broken = 500, Rolled = 500 };
        return Assert.IsType<Drafting.Made>(Revoicing.Draft(
            sheet, ShippedTowers.Default, sound, DraftWish.None, null, TestContext.Current.CancellationToken)).Arrangement;
    }
}
