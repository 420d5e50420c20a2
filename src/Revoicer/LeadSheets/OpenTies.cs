using Revoicer.Music;

namespace Revoicer.LeadSheets;

/// <summary>
/// Which notes as heard are one stroke. A tie joins a note to the next of the same pitch where that begins when it ends.
/// Where both notes are marked, both marks count; a tie with one end leads over a jump alone (MusicXML 4.0, "tied": such
/// ties lead into or out of repeated sections and codas). Two of one pitch may sound at a time, each tied by itself.
/// </summary>
/// <typeparam name="T">What stands for the stroke.</typeparam>
/// <param name="sheet">The sheet whose bars are walked through as heard.</param>
internal sealed class OpenTies<T>(LeadSheet sheet)
{
    private readonly Dictionary<(WrittenNote Note, Beats End), List<(TuneNote Piece, T Stroke)>> _last = [];

    /// <summary>Whether a note is tied to one before it; gives the stroke of that.</summary>
    /// <param name="note">The note.</param>
    /// <param name="played">Its bar as heard, as an index.</param>
    /// <param name="stroke">The stroke that it belongs to.</param>
    public bool Into(TuneNote note, int played, out T stroke)
    {
        var hasJumped = note.Start == Beats.Zero && sheet.IsJumpedTo(played);
        var waiting = _last.GetValueOrDefault((note.Note, sheet.Played[played].Start + note.Start));
        var place = waiting?.FindIndex(before => Joins(before.Piece, note, hasJumped)) ?? -1;
        stroke = place < 0 ? default! : waiting![place].Stroke;
        if (place >= 0)
        {
            waiting!.RemoveAt(place);
        }

        return place >= 0;
    }

    /// <summary>Keeps a note in mind for those that follow.</summary>
    public void Keep(TuneNote note, int played, T stroke)
    {
        var end = (note.Note, sheet.Played[played].Start + note.Start + note.Length);
        if (!_last.TryGetValue(end, out var waiting))
        {
            _last[end] = waiting = [];
        }

        waiting.Add((note, stroke));
    }

    private static bool Joins(TuneNote before, TuneNote after, bool hasJumped) => after.TieEnd switch
    {
        TieEnd.Unsaid or TieEnd.Paired => before.IsTiedOn,
        TieEnd.OneEnded => before.IsTiedOn || hasJumped,
        _ => hasJumped && before is { IsTiedOn: true, TieEnd: TieEnd.OneEnded },
    };
}
