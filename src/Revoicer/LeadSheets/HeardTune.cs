using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>A note of the tune as heard, ties joined.</summary>
/// <param name="Note">The key, sheet pitch = written pitch.</param>
/// <param name="Name">Its spelled name.</param>
/// <param name="Start">Where it is struck in the piece as heard.</param>
/// <param name="Length">How long it lasts, tied notes included.</param>
/// <param name="WrittenBar">Index of the written bar in which it is struck.</param>
/// <param name="Pass">1 the first time that bar is heard, 2 the second, ...</param>
public sealed record HeardNote(WrittenNote Note, NoteName Name, Beats Start, Beats Length, int WrittenBar, int Pass)
{
    /// <summary>Where it ends in the piece as heard.</summary>
    public Beats End => Start + Length;

    /// <summary>Whether a roll mark stands before it where it is struck.</summary>
    public bool IsRolled { get; init; }

    /// <summary>Whether it is written for the feet, where music exists in full.</summary>
    public bool IsForFeet { get; init; }
}

/// <summary>The tune of a sheet as heard: repeats unfolded, ties joined.</summary>
public static class HeardTune
{
    /// <summary>All notes in order of start, then upward; none where the sheet has no tune.</summary>
    public static Items<HeardNote> Of(LeadSheet sheet)
    {
        var heard = new List<HeardNote>();
        var ties = new OpenTies<int>(sheet);
        for (var i = 0; i < sheet.Played.Count; i++)
        {
            var played = sheet.Played[i];
            foreach (var note in sheet.Bars[played.Written].Notes)
            {
                if (ties.Into(note, i, out var tied))
                {
                    heard[tied] = heard[tied] with { Length = heard[tied].Length + note.Length };
                }
                else
                {
                    tied = heard.Count;
                    heard.Add(new HeardNote(note.Note, note.Name, played.Start + note.Start, note.Length, played.Written, played.Pass) { IsRolled = note.IsRolled });
                }

                ties.Keep(note, i, tied);
            }
        }

        return heard.OrderBy(n => n.Start).ThenBy(n => n.Note).ToItems();
    }
}
