using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>A place in the piece as heard at which a chord begins, or at which chords end.</summary>
/// <param name="At">The place.</param>
/// <param name="Symbol">The chord symbol as in the sheet; null where from here on none sounds.</param>
/// <param name="SoundingBass">The bass that is struck where it is not the symbol's own.</param>
internal sealed record ChordMark(Beats At, string? Symbol, NoteName? SoundingBass)
{
    /// <summary>All marks in order of place.</summary>
    public static IReadOnlyList<ChordMark> Of(Arrangement arrangement)
    {
        var marks = new List<ChordMark>();
        var end = Beats.Zero;
        foreach (var choice in arrangement.Choices.OrderBy(c => c.Start).DistinctBy(c => c.Start))
        {
            if (marks.Count > 0 && end < choice.Start)
            {
                marks.Add(new ChordMark(end, null, null));
            }

            marks.Add(new ChordMark(choice.Start, choice.Symbol, choice.SoundingBass));
            end = choice.Start + choice.Length;
        }

        if (marks.Count > 0 && end < arrangement.Bars[^1].Start + arrangement.Bars[^1].Length)
        {
            marks.Add(new ChordMark(end, null, null));
        }

        return marks;
    }
}
