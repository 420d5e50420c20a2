using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>A bar of the score, all that is written in it.</summary>
/// <param name="Paper">The bar and the signs around it.</param>
/// <param name="Voices">The signs of each voice, in the order of <see cref="ScoreVoice"/>.</param>
/// <param name="Marks">The chords that are shown.</param>
/// <param name="Basses">The chords whose bass is another than the symbol's.</param>
/// <param name="Tempi">The speeds that begin in it.</param>
/// <param name="Key">The key that holds in it; null where the sheet names none.</param>
internal sealed record ScoreMeasure(
    PaperBar Paper,
    IReadOnlyList<IReadOnlyList<ScorePiece>> Voices,
    IReadOnlyList<ChordMark> Marks,
    IReadOnlyList<ChordMark> Basses,
    IReadOnlyList<TempoChange> Tempi,
    KeySignature? Key)
{
    /// <summary>Where chords are rolled, from the start of the bar.</summary>
    public IReadOnlyList<Beats> Rolls { get; } =
        [.. Voices.SelectMany(v => v).Where(p => p is { Note.IsRolled: true, IsTiedBack: false }).Select(p => p.Start).Distinct().Order()];

    /// <summary>The bar.</summary>
    public ArrangedBar Bar => Paper.Bar;

    /// <summary>The bars of an arrangement's score.</summary>
    public static IReadOnlyList<ScoreMeasure> All(Arrangement arrangement)
    {
        var heard = new HeardBars(arrangement);
        var keys = new KeysInForce(arrangement);
        var measures = new List<ScoreMeasure>();
        ChordMark? shown = null;
        foreach (var paper in RepeatFolding.Of(arrangement.Bars, heard.Contents()))
        {
            var bar = paper.Heard;
            shown = paper.IsEntrance || measures is [.., { Paper.Times: > 0 }] ? null : shown;
            measures.Add(new ScoreMeasure(
                paper,
                [.. Enum.GetValues<ScoreVoice>().Select(v => BarRhythm.Of(paper.Bar, heard.Notes(bar, v)))],
                NewSymbols(heard.Marks(bar), ref shown),
                [.. heard.Marks(bar).Where(m => m.SoundingBass is not null)],
                heard.Tempi(bar),
                keys.Of(paper.Bar)));
        }

        return measures;
    }

    // A symbol is shown where it is another than the one before it, as in a lead sheet.
    private static List<ChordMark> NewSymbols(IReadOnlyList<ChordMark> marks, ref ChordMark? shown)
    {
        var symbols = new List<ChordMark>();
        foreach (var mark in marks)
        {
            if (shown is null || mark.Symbol != shown.Symbol)
            {
                symbols.Add(mark);
            }

            shown = mark;
        }

        return symbols;
    }
}
