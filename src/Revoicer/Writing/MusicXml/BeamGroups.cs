using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>Joins the tails of notes within a beat of the metre by beams.</summary>
internal static class BeamGroups
{
    /// <summary>The signs of a bar with their beams.</summary>
    public static IReadOnlyList<ScorePiece> Over(IReadOnlyList<ScorePiece> pieces, ArrangedBar bar)
    {
        var beamed = pieces.ToArray();
        for (var from = 0; from < beamed.Length;)
        {
            var to = from + 1;
            while (to < beamed.Length && IsTailed(beamed[from]) && IsTailed(beamed[to]) && Beat(beamed[to]) == Beat(beamed[from]))
            {
                to++;
            }

            if (to - from > 1)
            {
                Join(beamed.AsSpan(from, to - from));
            }

            from = to;
        }

        return beamed;

        long Beat(ScorePiece piece) => Beats.WholeTimes(piece.Start + bar.Offset, bar.Meter.Beat);
    }

    private static bool IsTailed(ScorePiece piece) => piece.Note is not null && piece.Value?.Beams > 0;

    private static void Join(Span<ScorePiece> group)
    {
        for (var i = 0; i < group.Length; i++)
        {
            var beams = new string[group[i].Value!.Value.Beams];
            for (var level = 1; level <= beams.Length; level++)
            {
                var before = i > 0 && group[i - 1].Value!.Value.Beams >= level;
                var after = i + 1 < group.Length && group[i + 1].Value!.Value.Beams >= level;
                beams[level - 1] = (before, after) switch
                {
                    (false, true) => "begin",
                    (true, true) => "continue",
                    (true, false) => "end",
                    _ => i > 0 ? "backward hook" : "forward hook",
                };
            }

            group[i] = group[i] with { Beams = beams };
        }
    }
}
