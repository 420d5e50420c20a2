using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.MusicXml;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Tests.Writing.MusicXml;
using Revoicer.Text;
using Revoicer.Writing.MusicXml;
using Xunit;

namespace Revoicer.Tests.LeadSheets.MusicXml;

/// <summary>The scores that the program writes, read as lead sheets.</summary>
public sealed class OwnScoresTests
{
    [Law(Arbitrary = [typeof(ScoreGens)], MaxTest = 300)]
    public void Bars_chords_metre_tempo_and_the_right_hand_come_back(Arrangement arrangement)
    {
        var rightHand = arrangement.Strokes.Where(s => s.Limb == Limb.RightHand).ToArray();
        var sheet = Score.Accepted(MusicXmlWriting.Bytes(arrangement), rightHand.Length > 0 ? "1" : null).Value;
        Assert.Equal(
            arrangement.Bars.Select(b => (b.Start, b.Length, b.Meter)),
            sheet.Played.Select(p => (p.Start, sheet.Bars[p.Written].Length, sheet.Bars[p.Written].Meter)));
        Assert.Equal(arrangement.Tempi.Changes[0].Tempo.QuartersPerMinute, sheet.Tempo!.Value.QuartersPerMinute, 1e-2);
        Assert.Equal(arrangement.WrittenKey, sheet.Key);
        Assert.Equal(
            Changes(arrangement.Choices.Select(c => (c.Start, c.Symbol))),
            Changes(sheet.Played.SelectMany(p => sheet.Bars[p.Written].Chords, (p, c) => (p.Start + c.Start, c.Symbol?.ToString() ?? "-"))));
        if (rightHand.Length > 0)
        {
            Assert.Equal(
                rightHand.Select(s => (s.Beat, s.Note.Midi)).OrderBy(s => s),
                HeardTune.Of(sheet).Select(n => (n.Start, n.Note.Midi)).OrderBy(s => s));
        }
    }

    [Law(Arbitrary = [typeof(ScoreGens)], MaxTest = 300)]
    public void A_score_comes_back_as_a_passage_of_all_strokes(Arrangement arrangement) =>
        AssertStrokes(arrangement, MusicXmlReader.Passage("quay.musicxml", MusicXmlWriting.Bytes(arrangement)));

    private static void AssertStrokes(Arrangement arrangement, Reading<Passage> reading)
    {
        var passage = Assert.IsType<Reading<Passage>.Accepted>(reading).Value;
        Assert.Equal(
            arrangement.Strokes.Select(s => (s.Beat, s.Note.Midi)).Distinct().Order(),
            passage.Voices.SelectMany(passage.Heard).Select(n => (n.Start, n.Note.Midi)).Distinct().Order());
        Assert.False(passage.Sheet.HasTune);
    }

    private static List<(Beats, string)> Changes(IEnumerable<(Beats At, string Symbol)> symbols)
    {
        var changes = new List<(Beats, string Symbol)>();
        foreach (var (at, symbol) in symbols)
        {
            if (changes.Count == 0 || changes[^1].Symbol != symbol)
            {
                changes.Add((at, symbol));
            }
        }

        return changes;
    }
}
