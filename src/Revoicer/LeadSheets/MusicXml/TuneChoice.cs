using Revoicer.Values;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Which part and voice of a score has the tune.</summary>
/// <param name="Part">Index of the part.</param>
/// <param name="Voice">The voice's name.</param>
internal sealed record TuneChoice(int Part, string Voice)
{
    /// <summary>What was asked for: a part's id or name, else a voice of the first part; null where there is no such.</summary>
    public static TuneChoice? Of(IReadOnlyList<ScorePart> parts, string? asked)
    {
        if (asked is null)
        {
            return new TuneChoice(0, TopOf(parts[0]));
        }

        var part = parts.Index().Where(p => p.Item.Id == asked || p.Item.Name == asked).Select(p => (int?)p.Index).FirstOrDefault();
        return part is { } found ? new TuneChoice(found, TopOf(parts[found]))
            : VoicesOf(parts[0]).Contains(asked) ? new TuneChoice(0, asked)
            : null;
    }

    /// <summary>The voices of a part, those of the upper staff first, in the order of their numbers.</summary>
    public static Items<string> VoicesOf(ScorePart part) => part.Measures
        .SelectMany(m => m.Music.Children("note"))
        .Where(n => !n.Has("grace") && n.Has("pitch"))
        .Select(n => (Staff: NoteReader.StaffOf(n), Voice: NoteReader.VoiceOf(n)))
        .Distinct()
        .OrderBy(v => Elements.Whole(v.Staff) ?? int.MaxValue)
        .ThenBy(v => Elements.Whole(v.Voice) ?? int.MaxValue)
        .Select(v => v.Voice)
        .Distinct()
        .ToItems();

    private static string TopOf(ScorePart part) => VoicesOf(part).FirstOrDefault("1");
}
