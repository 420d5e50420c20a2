using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.MusicXml;

/// <summary>A voice of the score: each hand has one on the upper staff, both feet share the one of the lower.</summary>
internal enum ScoreVoice
{
    /// <summary>Upper staff, stems up.</summary>
    RightHand,

    /// <summary>Upper staff, stems down.</summary>
    LeftHand,

    /// <summary>Lower staff.</summary>
    Feet,
}

/// <summary>What one voice strikes at one place, and how long it is written.</summary>
/// <param name="Voice">The voice.</param>
/// <param name="Start">Where it is struck in the piece as heard.</param>
/// <param name="End">Where the written value ends, later.</param>
/// <param name="Strokes">The strokes, lowest first.</param>
/// <param name="IsRolled">Whether they belong to a roll.</param>
internal sealed record VoiceNote(ScoreVoice Voice, Beats Start, Beats End, Items<Stroke> Strokes, bool IsRolled)
{
    /// <summary>
    /// The notes of a voice in order. A bell rings on whatever is written: a value ends where the voice strikes again, with
    /// the sheet's own value for the tune, with its chord for the accompaniment.
    /// </summary>
    public static IReadOnlyList<VoiceNote> Of(Arrangement arrangement, ScoreVoice voice)
    {
        var chords = new ChordOfStroke(arrangement);
        var end = arrangement.Bars[^1].Start + arrangement.Bars[^1].Length;
        var struck = arrangement.Strokes
            .Where(s => VoiceOf(s.Limb) == voice)
            .GroupBy(s => s.Beat)
            .OrderBy(g => g.Key)
            .Select(g => (Start: g.Key, Strokes: g.OrderBy(s => s.Note).DistinctBy(s => s.Note).ToItems()))
            .ToArray();
        return
        [
            .. struck.Select((s, i) => new VoiceNote(
                voice,
                s.Start,
                Earlier(Earlier(ValueEnd(s.Strokes), i + 1 < struck.Length ? struck[i + 1].Start : end), end),
                s.Strokes,
                s.Strokes.Any(chords.IsRolled))),
        ];

        Beats ValueEnd(Items<Stroke> strokes) =>
            strokes.Where(s => s.Sheet is not null).Select(s => (Beats?)(s.Beat + s.Sheet!.Value.Length)).Max()
            ?? strokes.Max(s => Later(chords.EndOf(s), BarEnd(arrangement, s.Beat), s.Beat));
    }

    /// <summary>The voice in which a limb is written.</summary>
    public static ScoreVoice VoiceOf(Limb limb) => limb switch
    {
        Limb.RightHand => ScoreVoice.RightHand,
        Limb.LeftHand => ScoreVoice.LeftHand,
        _ => ScoreVoice.Feet,
    };

    private static Beats Later(Beats? chordEnd, Beats barEnd, Beats from) => chordEnd is { } end && end > from ? end : barEnd;

    private static Beats BarEnd(Arrangement arrangement, Beats place)
    {
        var bar = arrangement.Bars.Last(b => b.Start <= place);
        return bar.Start + bar.Length;
    }

    private static Beats Earlier(Beats a, Beats b) => a < b ? a : b;
}
