using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Values;
using Revoicer.Writing.MusicXml;
using Xunit;

namespace Revoicer.Tests.Writing.MusicXml;

/// <summary>
/// Which values a note is written in: the beats that divide a bar stay visible (common practice; so E. Gould, Behind Bars,
/// 2011, on grouping notes within the bar; from memory).
/// </summary>
public sealed class BarRhythmTests
{
    // Start and length of a note in eighths, then the eighths of its tied values.
    [Theory]
    [InlineData(4, 4, 0, 8, "8")]
    [InlineData(4, 4, 2, 4, "4")] // syncopation from beat to beat: one half note
    [InlineData(4, 4, 3, 2, "1 1")] // a quarter after the second beat hides the middle of the bar: parted
    [InlineData(4, 4, 1, 2, "2")] // inside a half bar an eighth's syncopation may stand
    [InlineData(4, 4, 1, 6, "3 3")]
    [InlineData(4, 4, 3, 4, "1 3")]
    [InlineData(3, 4, 1, 2, "2")]
    [InlineData(6, 8, 2, 2, "1 1")] // the second dotted beat stays visible
    [InlineData(6, 8, 0, 6, "6")]
    public void The_middle_of_a_bar_stays_visible(int upper, int lower, int start, int length, string values)
    {
        var meter = new Meter(upper, lower);
        var bar = new ArrangedBar(1, 1, Beats.Zero, meter.Bar, meter);
        var note = new VoiceNote(ScoreVoice.RightHand, Eighths(start), Eighths(start + length), [], IsRolled: false);
        var pieces = BarRhythm.Of(bar, [note]).Where(p => p.Note is not null).ToArray();

        Assert.Equal(values, string.Join(' ', pieces.Select(p => (p.End - p.Start) * 2)));
        Assert.Equal(pieces.Length - 1, pieces.Count(p => p.IsTiedOn));
    }

    private static Beats Eighths(int count) => Beats.OfQuarters(count, 2);
}
