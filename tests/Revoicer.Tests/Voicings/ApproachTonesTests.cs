using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

/// <summary>
/// Tones that lead by step into the next bass. Which tones lead, and that they stand on a weak beat, is common practice: a step of
/// the key from either side, or the semitone below.
/// </summary>
public sealed class ApproachTonesTests
{
    [Theory]
    [InlineData("4/4", "| C | F | F |", "C3: E3 3; C4: E4 3, G3 3")]
    [InlineData("3/4", "| Cm | Ab | Ab |", "C3: G3 2; C4: A3 2, G4 2; D#4: A3 2, G4 2")]
    public void Lead_on_the_last_beat(string time, string bars, string expected) => Assert.Equal(expected, Text(time, bars));

    [Theory]
    [InlineData("4/4", "| C | D | C |")]
    [InlineData("4/4", "| C | C7 | F |")]
    [InlineData("6/8", "| C | F | F |")]
    [InlineData("4/4", "| C F C F | C |")]
    [InlineData("4/4", "| C | C | C | C || F | C |")]
    public void None_leads(string time, string bars) => Assert.Equal("", Text(time, bars));

    private static string Text(string time, string bars)
    {
        var tower = ShippedTowers.Default;
        var search = new CandidateSearch(tower, new Reach(PlayingLimits.For(tower), tower.Transposition), new Seconds(0.06));
        var plan = ApproachTones.Marked(Sheets.Plan($"key: C\ntime: {time}\ntempo: 60\n{bars}\n"));
        return string.Join("; ", search.List(plan.Slots[0])
            .Where(c => c.Approach is not null)
            .Select(c => (Bass: c.Voicing.Bass!.Value, Approach: c.Strokes.Single(s => s.IsPedal && s.Note == c.Approach && s.After > Beats.Zero)))
            .GroupBy(c => c.Bass, c => $"{c.Approach.Note} {c.Approach.After.Quarters:0.##}")
            .OrderBy(g => g.Key)
            .Select(g => $"{g.Key}: {string.Join(", ", g.Distinct().Order())}"));
    }
}
