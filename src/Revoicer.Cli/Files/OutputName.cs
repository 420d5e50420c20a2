namespace Revoicer.Cli.Files;

/// <summary>The common name of a run's results.</summary>
internal static class OutputName
{
    /// <summary>The endings of a draft's files, in the order in which they are told.</summary>
    public static IReadOnlyList<string> Endings { get; } = [".mid", ".txt", ".json", ".musicxml"];

    // For a sheet whose file is an ending alone, ".abc": no file of a run is hidden because of that.
    private const string Nameless = "untitled";

    /// <summary>
    /// The name asked for, without one of the endings that will be added; where that is a folder, by a stroke or a point at its end,
    /// the sheet's name in that folder. Where nothing was asked for, the sheet's name in this folder.
    /// </summary>
    public static string Of(string? asked, string sheet) => asked switch
    {
        null => OfSheet(sheet),
        _ when IsFolder(asked) => Path.Combine(asked, OfSheet(sheet)),
        _ => WithoutEnding(asked),
    };

    /// <summary>Whether a name asked for leaves anything for the files' names.</summary>
    public static bool LeavesName(string asked) => asked.Length > 0 && (IsFolder(asked) || Path.GetFileName(WithoutEnding(asked)).Length > 0);

    // With "-draft" behind it where the sheet is itself a score, so that it does not stand in the way.
    private static string OfSheet(string sheet)
    {
        var own = Path.GetFileNameWithoutExtension(sheet) is { Length: > 0 } name ? name : Nameless;
        return WithoutEnding(Path.GetExtension(sheet).Equals(".musicxml", StringComparison.OrdinalIgnoreCase) ? own + "-draft" : own);
    }

    private static bool IsFolder(string name) => Path.GetFileName(name) is "" or "." or ".." && name.Length > 0;

    private static string WithoutEnding(string name)
    {
        var ending = Endings.FirstOrDefault(e => name.EndsWith(e, StringComparison.OrdinalIgnoreCase));
        return ending is null ? name : name[..^ending.Length];
    }
}
