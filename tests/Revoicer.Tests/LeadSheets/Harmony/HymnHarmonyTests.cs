using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Harmony;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Harmony;

/// <summary>The chords of hymns in four voices (Open Hymnal Project, public domain), which have no symbols.</summary>
public sealed class HymnHarmonyTests
{
    [Fact]
    public void Nearly_all_of_every_hymn_has_a_chord_and_the_rest_is_told()
    {
        var found = Hymns.All().Select(h => HarmonyFinding.Of(h.Passage, cancel: TestContext.Current.CancellationToken)).ToArray();
        var all = found.Sum(f => f.Sheet.Bars.Sum(b => b.Length.Quarters));
        Assert.InRange(found.Sum(f => f.Unclear.Sum(u => u.Length.Quarters)) / all, 0, 0.005);
        Assert.All(found, f => Assert.InRange(f.Unclear.Count, 0, 3));
    }

    [Fact]
    public void Nearly_all_hymns_end_on_the_chord_of_their_keynote()
    {
        // Common practice. The files name every key as a major one, so that of the relative minor counts as well, with either
        // third.
        var ends = Hymns.All().Count(h =>
        {
            var last = HarmonyFinding.Of(h.Passage, cancel: TestContext.Current.CancellationToken).Sheet.Bars[^1].Chords[^1].Symbol!;
            var key = h.Passage.Sheet.Key!.Value;
            return last is { Bass: null, Suffix: "" or "m" } && (last.Root == key.Tonic || last.Root == key.Tonic.Above(5, 9));
        });
        Assert.InRange(ends / 70.0, 0.94, 1);
    }

    [Fact]
    public void Most_chords_of_hymns_are_triads_and_sevenths_of_their_key()
    {
        // Common practice: four voices sing major and minor triads and dominant sevenths for most of the time.
        var spans = Hymns.All().SelectMany(h => HarmonyFinding.Of(h.Passage, cancel: TestContext.Current.CancellationToken).Sheet.Bars).SelectMany(b => b.Chords).Where(c => c.Symbol is not null).ToArray();
        var plain = spans.Where(c => c.Symbol!.Suffix is "" or "m" or "7").Sum(c => c.Length.Quarters);
        Assert.InRange(plain / spans.Sum(c => c.Length.Quarters), 0.85, 1);
    }

    [Fact]
    public void A_hymn_is_harmonised_as_its_voices_sing() => Expected.Text("hymn-chords", string.Join("\n\n", Hymns.All()
        .Where(h => h.Name is "Amazing_Grace-New_Britain" or "Almighty_God_Your_Word_Is_Cast-St_Anne")
        .Select(h => $"{h.Name}\n{Chorded.Of(h.Passage).Replace(" | ", "\n", StringComparison.Ordinal)}")) + "\n");
}
