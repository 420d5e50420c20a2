namespace Revoicer.Tests.HouseRules;

/// <summary>
/// Which room may use which: a room is a namespace right under Revoicer, and may use the rooms named beside it and what
/// those may use.
/// </summary>
internal static class Rooms
{
    /// <summary>What lies in no room, the journey through all of them.</summary>
    public const string Journey = "";

    public static readonly IReadOnlyDictionary<string, string[]> MayUse = new Dictionary<string, string[]>
    {
        ["Values"] = [],
        ["Music"] = ["Values"],
        ["Text"] = ["Values"],
        ["Smf"] = ["Music", "Text"],
        ["Chords"] = ["Music", "Text"],
        ["LeadSheets"] = ["Chords", "Smf"],
        ["Bells"] = ["Music", "Text"],
        ["Clashes"] = ["Bells"],
        ["Sounds"] = ["Music", "Text"],
        ["Playing"] = ["Bells"],
        ["Voicings"] = ["LeadSheets", "Playing", "Sounds"],
        ["Prices"] = ["Clashes", "Voicings"],
        ["Solving"] = ["Prices"],
        ["Arrangements"] = ["Prices", "Solving"],
        ["Audits"] = ["Arrangements"],
        ["Comparisons"] = ["Arrangements"],
        ["Writing"] = ["Audits", "Comparisons"],
        ["Listening"] = ["Bells", "Playing"],
        ["Pictures"] = ["Writing"],
        [Journey] = ["Writing", "Listening", "Pictures"],
    };

    /// <summary>Rooms that others know by a few types alone.</summary>
    public static readonly IReadOnlyDictionary<string, string[]> Doors = new Dictionary<string, string[]>
    {
        ["Solving"] = ["Outcome", "SlotOutcome", "BarredCandidate"],
    };

    /// <summary>Other people's libraries, by the start of their namespaces, and the only places that know them.</summary>
    public static readonly IReadOnlyDictionary<string, string[]> Libraries = new Dictionary<string, string[]>
    {
        ["Google"] = ["Revoicer.Solving"],
        ["NAudio"] = ["Revoicer.Smf"],
        ["ScottPlot"] = ["Revoicer.Pictures"],
        ["SkiaSharp"] = ["Revoicer.Pictures"],
        ["Tomlyn"] = ["Revoicer.Text"],
    };

    /// <summary>
    /// What belongs to the machine and not to the library: it takes bytes and names, a TimeProvider and a
    /// CancellationToken.
    /// </summary>
    public static readonly string[] Machine =
    [
        "System.Console",
        "System.DateTime",
        "System.DateTimeOffset",
        "System.Environment",
        "System.Diagnostics.Stopwatch",
        "System.Diagnostics.Process",
        "System.IO.Directory",
        "System.IO.DirectoryInfo",
        "System.IO.File",
        "System.IO.FileInfo",
        "System.IO.FileStream",
    ];
}
