using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests;

// Music in four voices keeps its tune, its bass and a voice between them (common practice of writing in four voices).
public class RevoicingVoicesTests
{
    private static readonly Dictionary<double, Lazy<Revoiced>> Made =
        new double[] { 0, 0.5, 1 }.ToDictionary(c => c, c => new Lazy<Revoiced>(() => Anew(Evensong(), c)));

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1)]
    public void Every_long_chord_keeps_a_bass_and_an_inner_voice(double stayClose)
    {
        var voices = Made[stayClose].Value.Voices;
        Assert.NotEqual(0, voices.InnerAsked);
        Assert.Equal((voices.LongChords, voices.InnerAsked, 0), (voices.Basses, voices.InnerTones, voices.Silent));
    }

    [Fact]
    public void The_closer_it_stays_the_more_chords_are_kept_and_at_1_nine_in_ten_of_those_that_can_be()
    {
        Choice[] could = [.. Made[1].Value.After.Choices.Where(c => c.Former is { Notes.Count: > 0, CostsMore: >= 0 })];
        Assert.InRange(could.Count(c => c.Former!.IsKept), 0.9 * could.Length, could.Length);
        Assert.InRange(Kept(0.5), Kept(0) + 1, Kept(1) - 1);
    }

    // The basses are those of the file's voice B at the beginning of each chord, read off the page: G, F# and so on.
    [Fact]
    public void The_basses_of_the_music_are_the_basses_of_the_chords()
    {
        var revoiced = Made[0].Value;
        var passage = Evensong();
        var bass = passage.Heard(passage.Voice("B")!);
        foreach (var choice in revoiced.After.Choices)
        {
            var written = bass.Last(n => n.Start <= choice.Start).Note.PitchClass;
            var struck = choice.Strokes.Where(s => s.IsPedal).OrderBy(s => s.Beat).ThenBy(s => s.Note).First().Note.PitchClass;
            Assert.True(written == struck || !ChordHas(choice, written), $"bar {choice.Bar} beat {choice.Beat}, {choice.Symbol}: {written} became {struck}");
        }
    }

    private static bool ChordHas(Choice choice, PitchClass tone) => choice.ToneNames.Any(n => n.PitchClass == tone);

    private static int Kept(double stayClose) => Made[stayClose].Value.After.Choices.Count(c => c.Former is { Notes.Count: > 0, IsKept: true });

    private static Revoiced Anew(Passage passage, double stayClose)
    {
        var (tower, sound) = (ShippedTowers.Default, ShippedSounds.Default);
        var revoicing = PassageRevoicing.Of(passage, null)!;
        var wish = revoicing.Close(DraftWish.None, stayClose);
        var made = Assert.IsType<Drafting.Made>(Revoicing.Draft(revoicing.Sheet, tower, sound, wish, null, TestContext.Current.CancellationToken)).Arrangement;
        return revoicing.Beside(made, tower, sound, wish);
    }

    private static Passage Evensong() => Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage(
        "evensong.abc", RepositoryFiles.Text("leadsheets-demo", "passages", "harbour-evensong.abc"), SheetChoice.First)).Value;
}
