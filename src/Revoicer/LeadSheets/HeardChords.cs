using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>The chords of a sheet as heard, repeats unfolded.</summary>
public static class HeardChords
{
    /// <summary>
    /// For each bar as heard its stretches. They are those of the written bar, but for what fills the end of a bar that
    /// another bar began, as a pickup taken again after a repeat does: where it has no symbol of its own, the chord that
    /// sounds there goes on.
    /// </summary>
    public static Items<Items<ChordSpan>> Of(LeadSheet sheet)
    {
        var heard = new List<Items<ChordSpan>>();
        for (var i = 0; i < sheet.Played.Count; i++)
        {
            var bar = sheet.Bars[sheet.Played[i].Written];
            heard.Add(sheet.IsJumpedTo(i) && bar.Offset > Beats.Zero && bar.Chords[0].IsHeld
                ? [bar.Chords[0] with { Symbol = heard[^1][^1].Symbol }, .. bar.Chords.Skip(1)]
                : bar.Chords);
        }

        return heard.ToItems();
    }
}
