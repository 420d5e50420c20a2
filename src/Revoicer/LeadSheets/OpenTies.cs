using Revoicer.Music;

namespace Revoicer.LeadSheets;

/// <summary>
/// Which notes as heard are one stroke. A tie joins a note to the next of the same pitch where that begins when it ends.
/// Where both notes are marked, both marks count; a tie with one end leads over a jump alone (MusicXML 4.0, "tied": such
/// ties lead into or out of repeated sections and codas).
/// </summary>
/// <typeparam name="T">What stands for the stroke.</typeparam>
/// <param name="sheet">The sheet whose bars are walked through as heard.</param>
internal sealed class OpenTies<T>(LeadSheet sheet)
{
    private readonly Dictionary<WrittenNote, (TuneNote Piece, Beats End, T Stroke)> _last = [];

    /// <summary>Whether a note is tied to one before it; gives the stroke of that.</summary>
    /// <param name="note">The note.</param>
    /// <param name="played">Its bar as heard, as an index.</param>
    /// <param name="stroke">The stroke that it belongs to.</param>
    public bool Into(TuneNote note, int played, out T stroke)
    {
        var isKnown = _last.TryGetValue(note.Note, out var before);
        stroke = before.Stroke;
        return isKnown
            && before.End == sheet.Played[played].Start + note.Start
            && Joins(before.Piece, note, note.Start == Beats.Zero && sheet.IsJumpedTo(played));
    }

    /// <summary>Keeps a note in mind for those that follow.</summary>
    public void Keep(TuneNote note, int played, T stroke) =>
        _last[note.Note] = (note, sheet.Played[played].Start + note.Start + note.Length, stroke);

    private static bool Joins(TuneNote before, TuneNote after, bool hasJumped) => after.TieEnd switch
    {
        TieEnd.Unsaid or TieEnd.Paired => before.IsTiedOn,
        TieEnd.OneEnded => before.IsTiedOn || hasJumped,
        _ => hasJumped && before is { IsTiedOn: true, TieEnd: TieEnd.OneEnded },
    };
}
